// Calendar days at the service address, without clock or time zone. All arithmetic is Temporal.PlainDate;
// a Day itself is ISO text, so it crosses the database, JSON and React unchanged and compares with < and >.
import { Temporal } from "temporal-polyfill";

/** A real calendar day written YYYY-MM-DD. Made only by this file's functions. */
export type Day = string & { readonly brand: "Day" };

const isoDay = /^\d{4}-\d{2}-\d{2}$/;

/** The day that the text names, or undefined where there is no such day (2023-02-29) or another notation is used. */
export function readDay(text: string): Day | undefined {
  if (!isoDay.test(text)) return undefined;
  try {
    return toDay(Temporal.PlainDate.from(text, { overflow: "reject" }));
  } catch {
    return undefined;
  }
}

/** A day the caller knows to be real, such as a constant or a database `date`. @throws RangeError where it is not. */
export function day(text: string): Day {
  const read = readDay(text);
  if (read === undefined) throw new RangeError(`day: no such calendar day: ${text}`);
  return read;
}

/** Whole days from `from` to `to`; negative where `to` is earlier. */
export function daysBetween(from: Day, to: Day): number {
  return toPlainDate(from).until(toPlainDate(to), { largestUnit: "day" }).days;
}

/** The day `count` days later; earlier where count is negative. */
export function addDays(start: Day, count: number): Day {
  return toDay(toPlainDate(start).add({ days: count }));
}

/** One step of whole calendar months; a missing day becomes the last of its month (30 Nov + 3 months = 28 or 29 Feb). */
export function addMonths(start: Day, count: number): Day {
  return toDay(toPlainDate(start).add({ months: count }, { overflow: "constrain" }));
}

export function earlierOf(a: Day, b: Day): Day {
  return a <= b ? a : b;
}

export function laterOf(a: Day, b: Day): Day {
  return a >= b ? a : b;
}

export function toPlainDate(value: Day): Temporal.PlainDate {
  return Temporal.PlainDate.from(value);
}

/** The cast is this file's privilege: a PlainDate always prints a real day. */
export function toDay(date: Temporal.PlainDate): Day {
  return date.toString({ calendarName: "never" }) as Day;
}
