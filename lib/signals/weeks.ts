// What fails more than it should: weekly counts against what the ages of the units predict, followed by cumulative sums.
// Start at cell-weeks.ts (observed and expected), follow-cell.ts (the sums), worth-a-look.ts (what is listed), and
// settled-quarter.ts for what a week's run does not work out again.
import type { DayNumber } from "@/lib/calendar/day-number";

/** Weeks since the epoch, each from Monday to Sunday; day 4 of 1970 was a Monday. */
export type WeekNumber = number;

export const daysPerWeek = 7;
export const weeksPerYear = 52;
/** Rates are learnt anew at the start of each quarter of 13 weeks, so that a week's expectation never changes afterwards. */
export const weeksPerBlock = 13;

/** Half a year, for which it is told what is still to come. */
export const weeksAhead = 26;

const firstMonday = 4;

export function weekOf(day: DayNumber): WeekNumber {
  return Math.floor((day - firstMonday) / daysPerWeek);
}

export function firstDayOf(week: WeekNumber): DayNumber {
  return week * daysPerWeek + firstMonday;
}

export function lastDayOf(week: WeekNumber): DayNumber {
  return firstDayOf(week) + daysPerWeek - 1;
}

/** The last week that was over by the end of that day. */
export function lastWholeWeek(day: DayNumber): WeekNumber {
  return weekOf(day + 1) - 1;
}

export function blockOf(week: WeekNumber): number {
  return Math.floor(week / weeksPerBlock);
}

export function firstWeekOf(block: number): WeekNumber {
  return block * weeksPerBlock;
}

/**
 * Up to but not including this week everything is settled when a week is judged: the quarter before its own has not begun.
 * What rates are learnt from and what the sums have taken in ends here, and neither changes before the quarter is over.
 */
export function settledUntil(week: WeekNumber): WeekNumber {
  return firstWeekOf(blockOf(week) - 1);
}

/**
 * A job counts if it was closed by the end of the quarter after the one of its call: what comes later finds its quarter
 * settled, for its own machine as for all that it is held against.
 */
export function countsInTime({
  failedWeek,
  knownWeek,
}: {
  readonly failedWeek: WeekNumber;
  readonly knownWeek: WeekNumber;
}): boolean {
  return blockOf(knownWeek) <= blockOf(failedWeek) + 1;
}

const blocksPerYear = 4;
const mostYears = 8;

/** Longest record that is looked at: three years of baseline, five that are followed, and what has come since a year was last cut off. */
export function oldestWeek(lastWeek: WeekNumber): WeekNumber {
  return firstWeekOf(blocksPerYear * (Math.floor(blockOf(lastWeek) / blocksPerYear) - mostYears));
}

/** Ages from which a band runs, in weeks: quarters and halves in the first year, then years, and all from the sixteenth on. */
const bandsFrom = [0, 13, 26, ...Array.from({ length: 16 }, (_, year) => 52 * (year + 1))];

export const ageBandCount = bandsFrom.length;

const bandByWeek = Uint8Array.from(
  { length: 52 * 16 + 1 },
  (_, age) => bandsFrom.filter((from) => from <= age).length - 1,
);

/** Band of an age in whole weeks; an age below 0 counts as 0. */
export function ageBandOfWeeks(age: number): number {
  return bandByWeek[Math.max(0, Math.min(age, bandByWeek.length - 1))] ?? 0;
}

/** Ages in weeks that a band holds: from the first up to but not including the last; the oldest band has no end. */
export function weeksOfBand(band: number): { readonly from: number; readonly until: number } {
  return { from: bandsFrom[band] ?? 0, until: bandsFrom[band + 1] ?? Number.POSITIVE_INFINITY };
}
