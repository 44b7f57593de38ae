import { addDays, type Day, day, readDay } from "@/lib/calendar/day";
import { asItStands, held, type LooseReading, leftBlank, rewritten, takenWithNote } from "./loose-reading";
import type { DateOrder } from "./matching";
import { monthNumber } from "./month-names";
import { standsForUnknown } from "./stand-ins";

export interface DaySetting {
  /** "year first" settles nothing about 03/04/2025: such a cell is then held. */
  readonly dateOrder: DateOrder;
  readonly dayNumbersFrom: 1900 | 1904 | undefined;
  /** Nothing on record happened later, which can settle which of two readings is meant. */
  readonly today: Day;
}

/**
 * A day as exports write it, as YYYY-MM-DD. Where two readings are possible and the file's order does not say which, it is
 * held; never guessed. Sources: ISO 8601 for year first; the other notations are common practice, no source.
 */
export function readLooseDay(text: string, setting: DaySetting): LooseReading {
  const plain = text.trim();
  if (plain === "") return asItStands("");
  if (plain.length === 10 && readDay(plain) !== undefined) return standing(plain as Day); // just found to be a real day
  if (standsForUnknown(plain)) return leftBlank(`"${plain}" stands for unknown.`);
  if (/^0{1,4}[-/.]0{1,2}[-/.]0{1,4}(?: .*)?$|^0(?:\.0+)?$/.test(plain)) return placeholder(plain);
  const { date, dropped } = withoutTime(plain);
  const whole = readDate(date, setting);
  // Only what cannot be read with it has a day of the week in front: in "Mar 4" the word is the month.
  const read = whole.kind === "held" ? orWithoutWeekday(date, setting, whole) : whole;
  if (read.kind === "held" || dropped === undefined) return read;
  const note = read.note === undefined ? dropped : `${read.note} ${dropped}`;
  return read.ordinary === undefined && read.note !== undefined
    ? takenWithNote(read.text, note)
    : { ...read, note, ordinary: true };
}

/** Days that stand for unknown in exports: where counting begins in a program or a data base. Common practice, no source. */
const placeholders: ReadonlySet<string> = new Set([
  "0001-01-01",
  "1753-01-01",
  "1899-12-30",
  "1899-12-31",
  "1900-01-01",
  "1900-01-02",
  "1901-01-01",
  "1904-01-01",
  "1970-01-01",
]);

function standing(on: Day): LooseReading {
  return placeholders.has(on) || on.startsWith("9999") || on.startsWith("2999") ? placeholder(on) : asItStands(on);
}

function placeholder(text: string): LooseReading {
  return leftBlank(`${text} stands for "no date" in the program that wrote it.`);
}

function orWithoutWeekday(date: string, setting: DaySetting, whole: LooseReading): LooseReading {
  const rest = date.replace(/^\p{L}{2,10}[.,]{0,2}\s+/u, "");
  return rest === date ? whole : readDate(rest, setting);
}

function withoutTime(plain: string): { readonly date: string; readonly dropped: string | undefined } {
  const found =
    /^(.*?\d)(?:T|,?\s+|:(?=\d{1,2}:\d{2}:))(\d{1,2}[:.h]\d{2}(?::\d{2}(?:[.,:]\d+)?)?(?:\s*[ap]\.?m\.?)?)\s*(Z|[+-]\d{1,2}:?\d{0,2}|\(?[A-Z][A-Z+/:_\d-]{1,30}\)?)?$/i.exec(
      plain,
    );
  if (found === null) return { date: plain, dropped: undefined };
  const [, date = "", time = "", zone] = found;
  if (zone !== undefined)
    return {
      date,
      dropped: `The time ${time} and the zone ${zone} were left out; the day is the one that is written.`,
    };
  return {
    date,
    dropped: /^0{1,2}:00(?::00(?:[.,]0+)?)?$/.test(time)
      ? "A time of midnight was left out."
      : `The time ${time} was left out.`,
  };
}

function readDate(date: string, setting: DaySetting): LooseReading {
  const iso =
    /^(\d{4})\s?[-/. ]\s?(\d{1,2})\s?[-/. ]\s?(\d{1,2})\.?$/.exec(date) ??
    /^((?:19|20)\d{2})(\d{2})(\d{2})$/.exec(date);
  if (iso !== null) return oneDay(iso[1], iso[2], iso[3], "Written year first.");
  const numeric = /^(\d{1,2})\s?[-/. ]\s?(\d{1,2})\s?[-/. ]\s?(\d{4}|'?\d{2})$/.exec(date);
  if (numeric !== null) return byOrder(numeric[1] ?? "", numeric[2] ?? "", numeric[3] ?? "", setting);
  const named =
    /^(\d{1,2})(?:st|nd|rd|th|er|º|ª)?[-./, ]*(?:of |de )?(\p{L}{3,10})[-./, ]*(?:of |de )?(\d{4}|'?\d{2})$/iu.exec(
      date,
    );
  if (named !== null) return oneDay(named[3], monthNumber(named[2]), named[1], "The month is written as a word.");
  const monthFirst = /^(\p{L}{3,10})[-./ ]*(\d{1,2})(?:st|nd|rd|th)?[-./, ]+(\d{4}|'?\d{2})$/iu.exec(date);
  if (monthFirst !== null)
    return oneDay(monthFirst[3], monthNumber(monthFirst[1]), monthFirst[2], "The month is written as a word.");
  const yearNamed = /^(\d{4})[-./ ]*(\p{L}{3,10})[-./ ]*(\d{1,2})$/u.exec(date);
  if (yearNamed !== null)
    return oneDay(yearNamed[1], monthNumber(yearNamed[2]), yearNamed[3], "The month is written as a word.");
  if (/^\d{5}(?:[.,]\d+)?$/.test(date)) return dayNumber(date, setting);
  if (/^-?\d{1,4}(?:[.,]\d+)?$|^\d{6,}(?:[.,]\d+)?$/.test(date))
    return held(
      "is a bare number and no day",
      "Format the column as a date in the spreadsheet and export it anew, or write the day as YYYY-MM-DD.",
    );
  return held(
    "cannot be read as a day",
    "Write it as YYYY-MM-DD, such as 2024-03-09, or leave it blank if it is unknown.",
  );
}

function byOrder(first: string, second: string, year: string, { dateOrder, today }: DaySetting): LooseReading {
  const monthFirst = build(year, first, second);
  const dayFirst = build(year, second, first);
  if (monthFirst === undefined && dayFirst === undefined) return noSuchDay();
  if (dateOrder === "month first" || dateOrder === "day first") {
    const [stated, other] = dateOrder === "month first" ? [monthFirst, dayFirst] : [dayFirst, monthFirst];
    if (stated !== undefined) return written(stated, year, `${sentence(dateOrder)}.`);
    return held(
      `has no day when it is read ${dateOrder}, as the other days of this file`,
      `Look it up in the source. Read the other way round it is ${other}.`,
    );
  }
  const yearFirst = year.length === 2 ? build(first, second, year) : undefined;
  const readings = [...new Set([monthFirst, dayFirst, yearFirst])].filter((on) => on !== undefined && on <= today);
  const [only] = readings;
  if (readings.length === 1 && only !== undefined)
    return written(only, year, "Only this order gives a day up to today.");
  return held(
    `can be read as ${[...new Set([monthFirst, dayFirst, yearFirst])].filter((on) => on !== undefined).join(" or as ")}`,
    "Say under Look whether the day or the month comes first in this file.",
  );
}

function sentence(order: string): string {
  return `${order.charAt(0).toUpperCase()}${order.slice(1)}`;
}

function oneDay(
  year: string | undefined,
  month: string | undefined,
  dayOfMonth: string | undefined,
  note: string,
): LooseReading {
  const on = build(year, month, dayOfMonth);
  return on === undefined ? noSuchDay() : written(on, year ?? "", note);
}

function written(on: Day, year: string, note: string): LooseReading {
  const read = standing(on);
  if (read.kind !== "taken" || read.text === "") return read;
  return rewritten(
    on,
    year.replace("'", "").length === 2 ? `${note} Years of two digits are read as 1970 to 2069.` : note,
  );
}

function noSuchDay(): LooseReading {
  return held("is no day of the calendar", "Look it up in the source and write the day that is meant as YYYY-MM-DD.");
}

/** 1904 began counting 1,462 days later; day 1 of 1900 is two days after 30 December 1899, as a 29 February 1900 is counted. */
function dayNumber(text: string, { dayNumbersFrom, today }: DaySetting): LooseReading {
  const count = Math.floor(Number(text.replace(",", ".")));
  const from1900 = addDays(day("1899-12-30"), count);
  const from1904 = addDays(from1900, 1462);
  const taken = dayNumbersFrom === 1904 ? from1904 : from1900;
  if (dayNumbersFrom !== undefined)
    return takenWithNote(taken, `A spreadsheet's day number, counted from ${dayNumbersFrom}.`);
  if (from1900 <= today && from1904 > today)
    return takenWithNote(
      from1900,
      "A spreadsheet's day number, counted from 1900; counted from 1904 it would lie in the future.",
    );
  return held(
    `is a spreadsheet's day number: ${from1900} counted from 1900, ${from1904} counted from 1904`,
    "Say under Look where this file counts from, or format the column as a date in the spreadsheet and export it anew.",
  );
}

/** A year of two digits is read as 1970 to 2069. */
function build(year: string | undefined, month: string | undefined, dayOfMonth: string | undefined): Day | undefined {
  if (year === undefined || month === undefined || dayOfMonth === undefined) return undefined;
  const digits = year.replace("'", "");
  const full = digits.length === 4 ? digits : `${Number(digits) < 70 ? "20" : "19"}${digits.padStart(2, "0")}`;
  return readDay(`${full}-${month.padStart(2, "0")}-${dayOfMonth.padStart(2, "0")}`);
}
