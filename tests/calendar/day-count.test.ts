import { Temporal } from "temporal-polyfill";
import { expect, test } from "vitest";
import { addDays, addMonths, civilDay, day, daysBetween, readDay, weekdayOf } from "@/lib/calendar/day";
import { civilDate, dayCount } from "@/lib/calendar/day-count";
import { seeded } from "./seeded";

// Another library's results: the polyfill of ECMAScript Temporal, which shares no code with day-count.
test("every day of 1896 to 2104 has the count that Temporal's steps give it", () => {
  let date = Temporal.PlainDate.from("1896-01-01");
  const first = dayCount({ year: 1896, month: 1, dayOfMonth: 1 });
  for (let step = 0; date.year < 2105; step++) {
    const civil = { year: date.year, month: date.month, dayOfMonth: date.day };
    if (dayCount(civil) !== first + step) throw new Error(`count of ${date} is wrong`);
    expect(civilDate(first + step)).toEqual(civil);
    date = date.add({ days: 1 });
  }
});

test("20,000 random sums of days and of months are those of Temporal", () => {
  const random = seeded(20_240_229);
  for (let round = 0; round < 20_000; round++) {
    const plain = Temporal.PlainDate.from("1900-01-01").add({ days: random(120_000) });
    const start = day(plain.toString());
    const count = random(8000) - 4000;
    const months = random(600) - 300;
    expect(addDays(start, count)).toBe(plain.add({ days: count }).toString());
    expect(addMonths(start, months)).toBe(plain.add({ months }).toString());
    expect(daysBetween(start, addDays(start, count))).toBe(count);
  }
});

test("5,000 random days from year 0 to 9999 have Temporal's weekday and parts", () => {
  const random = seeded(7);
  for (let round = 0; round < 5000; round++) {
    const plain = Temporal.PlainDate.from("0000-01-01").add({ days: round < 100 ? round : random(3_652_000) });
    const one = day(plain.toString());
    expect(weekdayOf(one)).toBe(plain.dayOfWeek - 1);
    expect(civilDay(one)).toEqual({ year: plain.year, month: plain.month, dayOfMonth: plain.day });
  }
});

test.each(["2023-02-29", "1900-02-29", "2024-13-01", "2024-00-10", "2024-04-31", "2024-1-01", "2024-01-01T00:00", ""])(
  "%s is no day",
  (text) => expect(readDay(text)).toBeUndefined(),
);

test.each(["2024-02-29", "2000-02-29", "0000-01-01", "9999-12-31"])("%s is a day", (text) => {
  expect(readDay(text)).toBe(text);
});

test("a sum past the year 9999, or of half days, is the caller's mistake", () => {
  expect(() => addDays(day("9999-12-31"), 1)).toThrow(RangeError);
  expect(() => addMonths(day("0000-01-01"), -1)).toThrow(RangeError);
  expect(() => addDays(day("2024-01-01"), 0.5)).toThrow(RangeError);
});
