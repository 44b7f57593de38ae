import type { DayNumber } from "@/lib/calendar/day-number";
import { dayText, numberOfDay } from "./day-text";

/** Year and week as in ISO 8601: weeks begin on Monday, week 1 holds the year's first Thursday. */
export interface ProductionWeek {
  readonly year: number;
  readonly week: number;
}

function productionWeek(on: DayNumber): ProductionWeek {
  const thursday = mondayOf(on) + 3;
  const year = Number(dayText(thursday).slice(0, 4));
  return { year, week: 1 + (mondayOf(on) - firstMonday(year)) / 7 };
}

/** Monday of the week. */
export function weekStart({ year, week }: ProductionWeek): DayNumber {
  return firstMonday(year) + 7 * (week - 1);
}

/** Weeks as one running number, so that ranges compare. */
export function weekNumber(on: DayNumber): number {
  return (mondayOf(on) - 4) / 7;
}

/** As serials carry it: two digits of the year, two of the week. */
export function weekDigits(on: DayNumber): string {
  const { year, week } = productionWeek(on);
  return `${String(year % 100).padStart(2, "0")}${String(week).padStart(2, "0")}`;
}

/** Day 0 is Thursday 1 January 1970, so day 4 is a Monday. */
function mondayOf(on: DayNumber): DayNumber {
  return on - ((((on - 4) % 7) + 7) % 7);
}

function firstMonday(year: number): DayNumber {
  const known = firstMondays.get(year);
  if (known !== undefined) return known;
  const monday = mondayOf(numberOfDay(`${year}-01-04`)); // 4 January is always in week 1
  firstMondays.set(year, monday);
  return monday;
}

const firstMondays = new Map<number, DayNumber>();
