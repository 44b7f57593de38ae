// Calendar days at the service address, without clock or time zone. A Day is ISO text, so it crosses the database, JSON
// and React unchanged and compares with < and >. Sums are whole-number ones, held to Temporal.PlainDate by tests.
import { Temporal } from "temporal-polyfill";
import { type CivilDate, civilDate, dayCount, daysInMonth } from "./day-count";

/** A real calendar day written YYYY-MM-DD. Made only by this file's functions. */
export type Day = string & { readonly brand: "Day" };

const isoDay = /^\d{4}-\d{2}-\d{2}$/;

/** The day that the text names, or undefined where there is no such day (2023-02-29) or another notation is used. */
export function readDay(text: string): Day | undefined {
  if (!isoDay.test(text)) return undefined;
  const { year, month, dayOfMonth } = civilOf(text);
  if (month < 1 || month > 12 || dayOfMonth < 1 || dayOfMonth > daysInMonth(year, month)) return undefined;
  return text as Day; // just found to be a real day
}

/** A day the caller knows to be real, such as a constant or a database `date`. @throws RangeError where it is not. */
export function day(text: string): Day {
  const read = readDay(text);
  if (read === undefined) throw new RangeError(`day: no such calendar day: ${text}`);
  return read;
}

/** Whole days from `from` to `to`; negative where `to` is earlier. */
export function daysBetween(from: Day, to: Day): number {
  return dayCount(civilOf(to)) - dayCount(civilOf(from));
}

/** The day `count` days later; earlier where count is negative. @throws RangeError outside the years 0 to 9999 */
export function addDays(start: Day, count: number): Day {
  requireWhole(count);
  return written(civilDate(dayCount(civilOf(start)) + count));
}

/**
 * One step of whole calendar months; a missing day becomes the last of its month (30 Nov + 3 months = 28 or 29 Feb).
 * @throws RangeError outside the years 0 to 9999
 */
export function addMonths(start: Day, count: number): Day {
  requireWhole(count);
  const { year, month, dayOfMonth } = civilOf(start);
  const months = 12 * year + month - 1 + count;
  const newYear = Math.floor(months / 12);
  const newMonth = months - 12 * newYear + 1;
  return written({ year: newYear, month: newMonth, dayOfMonth: Math.min(dayOfMonth, daysInMonth(newYear, newMonth)) });
}

export function earlierOf(a: Day, b: Day): Day {
  return a <= b ? a : b;
}

export function laterOf(a: Day, b: Day): Day {
  return a >= b ? a : b;
}

/** Year, month and day of month: all that writing a day out needs, without an object of Temporal for each. */
export function civilDay(value: Day): CivilDate {
  return civilOf(value);
}

/** 0 for Monday to 6 for Sunday. */
export function weekdayOf(value: Day): number {
  return (((dayCount(civilOf(value)) + firstWeekday) % 7) + 7) % 7; // the count is negative in the first weeks of year 0
}

/** 1 March of year 0, the day from which days are counted, was a Wednesday. */
const firstWeekday = 2;

export function toPlainDate(value: Day): Temporal.PlainDate {
  return Temporal.PlainDate.from(value);
}

/** The cast is this file's privilege: a PlainDate always prints a real day. */
export function toDay(date: Temporal.PlainDate): Day {
  return date.toString({ calendarName: "never" }) as Day;
}

function civilOf(text: string): CivilDate {
  return { year: digits(text, 0, 4), month: digits(text, 5, 7), dayOfMonth: digits(text, 8, 10) };
}

function digits(text: string, from: number, to: number): number {
  let value = 0;
  for (let at = from; at < to; at++) value = 10 * value + text.charCodeAt(at) - 48;
  return value;
}

/** The cast is this file's privilege: only real days come here. */
function written({ year, month, dayOfMonth }: CivilDate): Day {
  if (year < 0 || year > 9999) throw new RangeError(`day: outside the years 0 to 9999: ${year}`);
  return `${String(year).padStart(4, "0")}-${two(month)}-${two(dayOfMonth)}` as Day;
}

function two(value: number): string {
  return value < 10 ? `0${value}` : String(value);
}

function requireWhole(count: number): void {
  if (!Number.isSafeInteger(count)) throw new RangeError(`count: whole number expected: ${count}`);
}
