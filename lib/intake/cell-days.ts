import { civilDay } from "@/lib/calendar/civil-day";
import { addDays, addMonths, type Day, readDay } from "@/lib/calendar/day";
import type { DayRange } from "@/lib/calendar/day-range";
import type { CellReading, CellType } from "./cell";

const firstYear = 1900;
const lastYear = 2199;

export const dayCell: CellType<Day> = {
  json: { format: "date" },
  example: "2024-03-09",
  read(text) {
    const on = readDay(text.trim());
    return on === undefined ? refuseDay(text.trim()) : inReach(on);
  },
};

/** A day; or a month or a year where no more of the day of manufacture is known. */
export const dayMonthOrYearCell: CellType<DayRange> = {
  json: { pattern: "^\\d{4}(-\\d{2}(-\\d{2})?)?$" },
  example: "2023-11",
  read(text) {
    const trimmed = text.trim();
    const months = /^\d{4}$/.test(trimmed) ? 12 : /^\d{4}-\d{2}$/.test(trimmed) ? 1 : 0;
    const first = readDay(months === 0 ? trimmed : `${trimmed}-01-01`.slice(0, 10));
    if (first === undefined) return refuseDay(trimmed);
    const read = inReach(first);
    if (!("value" in read)) return read;
    return { value: { earliest: first, latest: months === 0 ? first : addDays(addMonths(first, months), -1) } };
  },
};

/** A moment with its offset, kept as given. */
export const instantCell: CellType<string> = {
  json: { format: "date-time" },
  example: "2024-03-09T14:05:00-08:00",
  read(text) {
    const trimmed = text.trim();
    // The pattern keeps out notations that the calendar reads and the database does not, such as a named zone.
    const known = /^\d{4}-\d{2}-\d{2}T\d{2}:\d{2}(:\d{2}(\.\d{1,6})?)?(Z|[+-]\d{2}:\d{2})$/.test(trimmed);
    if (known && civilDay(trimmed, "UTC").kind === "day") return { value: trimmed };
    return {
      problem: "is not a moment in time",
      fix: "Write day, time and offset, such as 2024-03-09T14:05:00-08:00.",
    };
  },
};

function refuseDay(text: string): CellReading<never> {
  if (/^\d{4}-\d{2}(-\d{2})?$/.test(text))
    return { problem: "is no day of the calendar", fix: "Look it up in the source and write the day that is meant." };
  return { problem: "is not a day written year first", fix: "Write it as YYYY-MM-DD, such as 2024-03-09." };
}

function inReach(on: Day): CellReading<Day> {
  const year = Number(on.slice(0, 4));
  if (year >= firstYear && year <= lastYear) return { value: on };
  return {
    problem: `lies outside the years ${firstYear} to ${lastYear}`,
    fix: "Look it up in the source and write the day that is meant.",
  };
}
