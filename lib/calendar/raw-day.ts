import { addDays, type Day, day, readDay } from "./day";
import { type DayRange, monthRange } from "./day-range";

/** What a cell that should hold a day can say. Nothing here is guessed: two readings stay two. */
export type RawDay =
  | { readonly kind: "day"; readonly on: Day }
  | { readonly kind: "month"; readonly on: DayRange }
  | { readonly kind: "two_readings"; readonly monthFirst: Day; readonly dayFirst: Day }
  /** A spreadsheet's day number: the day in the 1900 system, and in the 1904 system. */
  | { readonly kind: "day_number"; readonly on: Day; readonly ifFrom1904: Day }
  /** A value that stands for "unknown", such as 1 January 1900. */
  | { readonly kind: "placeholder" }
  | { readonly kind: "no_such_day" }
  | { readonly kind: "unreadable" };

/** Reads the notations that exports use. Order of day and month is settled only where one order is impossible. */
export function readRawDay(text: string): RawDay {
  const plain = text.trim();
  if (/^0{4}-0{2}-0{2}|^00?[/.]00?[/.]0000$/.test(plain)) return { kind: "placeholder" };
  const iso = /^(\d{4})[-/.](\d{1,2})[-/.](\d{1,2})(?:[T ].*)?$/.exec(plain);
  if (iso !== null) return oneDay(iso[1], iso[2], iso[3]);
  const numeric = /^(\d{1,2})[-/. ](\d{1,2})[-/. ](\d{4}|\d{2})(?: .*)?$/.exec(plain);
  if (numeric !== null) return eitherOrder(numeric[1], numeric[2], numeric[3]);
  const month = /^(?:(\d{4})[-/](\d{1,2})|(\d{1,2})[-/](\d{4}))$/.exec(plain);
  if (month !== null) return wholeMonth(month[1] ?? month[4], month[2] ?? month[3]);
  const named = /^(\d{1,2})[-. ]*([A-Za-z]{3,9})[-., ]*(\d{4}|\d{2})$/.exec(plain);
  if (named !== null) return oneDay(named[3], monthNumber(named[2]), named[1]);
  const monthNamed = /^([A-Za-z]{3,9})[-. ]*(\d{1,2})[-., ]+(\d{4}|\d{2})$/.exec(plain);
  if (monthNamed !== null) return oneDay(monthNamed[3], monthNumber(monthNamed[1]), monthNamed[2]);
  if (/^\d{5}(?:\.\d+)?$/.test(plain)) return dayNumber(Math.floor(Number(plain)));
  return { kind: "unreadable" };
}

/** Days that exports write for "unknown". Common practice, no source. */
export const placeholderDays: ReadonlySet<string> = new Set([
  "1899-12-30",
  "1899-12-31",
  "1900-01-01",
  "1904-01-01",
  "1970-01-01",
  "9999-12-31",
]);

function oneDay(year: string | undefined, month: string | undefined, dayOfMonth: string | undefined): RawDay {
  const on = build(year, month, dayOfMonth);
  if (on === undefined) return { kind: "no_such_day" };
  return placeholderDays.has(on) ? { kind: "placeholder" } : { kind: "day", on };
}

function eitherOrder(first: string | undefined, second: string | undefined, year: string | undefined): RawDay {
  const monthFirst = build(year, first, second);
  const dayFirst = build(year, second, first);
  const on = monthFirst ?? dayFirst;
  if (on === undefined) return { kind: "no_such_day" };
  if (placeholderDays.has(on)) return { kind: "placeholder" };
  if (monthFirst === undefined || dayFirst === undefined || monthFirst === dayFirst) return { kind: "day", on };
  return { kind: "two_readings", monthFirst, dayFirst };
}

function wholeMonth(year: string | undefined, month: string | undefined): RawDay {
  const number = Number(month);
  return number >= 1 && number <= 12
    ? { kind: "month", on: monthRange(Number(year), number) }
    : { kind: "no_such_day" };
}

/**
 * Day 60 of the 1900 system is a 29 February that never was, so counting from 30 December 1899 is right from 61 on.
 * The 1904 system runs 1,462 days later. From memory; arithmetic checked in tests/calendar/raw-day.test.ts.
 */
function dayNumber(count: number): RawDay {
  if (count < 61) return { kind: "unreadable" };
  const on = addDays(day("1899-12-30"), count);
  return { kind: "day_number", on, ifFrom1904: addDays(on, 1462) };
}

/** A year of two digits is read as 1970 to 2069 (the POSIX reading starts at 1969). */
function build(year: string | undefined, month: string | undefined, dayOfMonth: string | undefined): Day | undefined {
  if (year === undefined || month === undefined || dayOfMonth === undefined) return undefined;
  const full = year.length === 4 ? year : `${Number(year) < 70 ? "20" : "19"}${year}`;
  return readDay(`${full}-${month.padStart(2, "0")}-${dayOfMonth.padStart(2, "0")}`);
}

const monthNames = ["jan", "feb", "mar", "apr", "may", "jun", "jul", "aug", "sep", "oct", "nov", "dec"];

function monthNumber(name: string | undefined): string | undefined {
  const index = monthNames.indexOf((name ?? "").slice(0, 3).toLowerCase());
  return index < 0 ? undefined : String(index + 1);
}
