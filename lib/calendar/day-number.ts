import { type Day, toDay, toPlainDate } from "./day";

/** Whole days since 1970-01-01, for passes over many days where text would be slow. */
export type DayNumber = number;

const millisecondsPerDay = 86_400_000;

/** Date.UTC only does calendar arithmetic here: no clock and no zone are read. */
export function dayNumber(day: Day): DayNumber {
  const { year, month, day: dayOfMonth } = toPlainDate(day);
  return Math.round(new Date(0).setUTCFullYear(year, month - 1, dayOfMonth) / millisecondsPerDay);
}

export function dayFromNumber(number: DayNumber): Day {
  return toDay(toPlainDate("1970-01-01" as Day).add({ days: number })); // the epoch is a real day
}
