import { describe, expect, test } from "vitest";
import { day } from "@/lib/calendar/day";
import type { LooseReading } from "@/lib/intake/matching/loose-reading";
import type { DateOrder } from "@/lib/intake/matching/matching";
import { readLooseDay } from "@/lib/intake/matching/read-loose-day";
import { readLooseLabour } from "@/lib/intake/matching/read-loose-labour";
import { readLooseMade } from "@/lib/intake/matching/read-loose-made";
import { readLooseNumber } from "@/lib/intake/matching/read-loose-number";

const said = (reading: LooseReading) => (reading.kind === "taken" ? reading.text : `held: ${reading.problem}`);
const rules = (dateOrder: DateOrder) => ({ dateOrder, dayNumbersFrom: undefined, today: day("2025-06-30") });

describe("days", () => {
  // By hand. The first group is ISO 8601; the others are notations that exports use.
  test.each([
    ["2025-03-04", "2025-03-04"],
    ["2025-3-4", "2025-03-04"],
    ["2025/03/04", "2025-03-04"],
    ["20250304", "2025-03-04"],
    ["2025-03-04T23:30:00", "2025-03-04"],
    ["2025-03-04T23:30:00Z", "2025-03-04"],
    ["2025-03-04 23:30:00.000 -0800", "2025-03-04"],
    ["2025-03-04T23:30:00+05:30", "2025-03-04"],
    ["3/4/2025", "2025-03-04"],
    ["3/4/25", "2025-03-04"],
    ["03.04.2025", "2025-03-04"],
    ["3-4-2025 2:15 PM", "2025-03-04"],
    ["3/4/2025, 14:15", "2025-03-04"],
    ["04-Mar-25", "2025-03-04"],
    ["4 March 2025", "2025-03-04"],
    ["4th of March, 2025", "2025-03-04"],
    ["Mar 4, 2025", "2025-03-04"],
    ["Tue, Mar 4, 2025", "2025-03-04"],
    ["Tuesday 4 March 2025", "2025-03-04"],
    ["4. März 2025", "2025-03-04"],
    ["4 mars 2025", "2025-03-04"],
    ["4 de marzo de 2025", "2025-03-04"],
    ["2025-Mar-04", "2025-03-04"],
    ["2/29/2024", "2024-02-29"],
    ["3/4/70", "1970-03-04"],
    ["3/4/69", "2069-03-04"],
  ])("%s is %s where the month comes first", (text, on) => {
    expect(said(readLooseDay(text, rules("month first")))).toBe(on);
  });

  test.each([
    ["3/4/2025", "2025-04-03"],
    ["13/4/2025", "2025-04-13"],
    ["29.2.2024", "2024-02-29"],
  ])("%s is %s where the day comes first", (text, on) => {
    expect(said(readLooseDay(text, rules("day first")))).toBe(on);
  });

  test("a cell against the order of the file is held, though only one order gives a day", () => {
    expect(said(readLooseDay("3/14/2025", rules("day first")))).toBe(
      "held: has no day when it is read day first, as the other days of this file",
    );
  });

  test("two readings are held where no order is settled, one that lies ahead is none", () => {
    expect(said(readLooseDay("3/4/2025", rules("year first")))).toBe(
      "held: can be read as 2025-03-04 or as 2025-04-03",
    );
    expect(said(readLooseDay("6/12/2025", rules("year first")))).toBe("2025-06-12");
    expect(said(readLooseDay("4/4/2025", rules("year first")))).toBe("2025-04-04");
  });

  test.each(["2025-02-29", "31/4/2025", "2/30/2025", "30 February 2025", "soon", "2025-13-01", "12"])(
    "%s is no day",
    (text) => {
      expect(said(readLooseDay(text, rules("month first")))).toMatch(/^held: /);
    },
  );

  test("what was left out is said", () => {
    expect(readLooseDay("2025-03-04T23:30:00Z", rules("month first"))).toMatchObject({
      note: expect.stringContaining("The time 23:30:00 and the zone Z were left out"),
    });
    expect(readLooseDay("3/4/25 2:15 PM", rules("month first"))).toMatchObject({
      note: "Month first. Years of two digits are read as 1970 to 2069. The time 2:15 PM was left out.",
    });
  });

  test.each([
    ["2019", "2019"],
    ["2019-11", "2019-11"],
    ["11/2019", "2019-11"],
    ["Nov 2019", "2019-11"],
    ["November-2019", "2019-11"],
    ["11/5/2019", "2019-11-05"],
    ["13/2019", "held: cannot be read as a day"],
    ["1850", "held: is no year in which an appliance that is serviced was made"],
  ])("made %s is %s", (text, made) => {
    expect(said(readLooseMade(text, rules("month first")))).toBe(made);
  });
});

describe("numbers", () => {
  test.each([
    ["129.5", "129.5"],
    ["1,234.50", "1234.50"],
    ["1 234.50", "1234.50"],
    ["1'234.50", "1234.50"],
    ["$1,234,567.00", "1234567.00"],
    ["(12.50)", "-12.50"],
    ["-12.50", "-12.50"],
    ["12.50-", "-12.50"],
    ["$ -12.50", "-12.50"],
    ["12.50 CR", "-12.50"],
    [".75", "0.75"],
    ["+5", "5"],
    ["2 ea", "2"],
    ["14.2 ohm", "14.2"],
    ["1.2E+3", "1200"],
    ["12,50", "held: has a comma where a number of this file with decimal point cannot have one"],
    ["1,23,456", "held: cannot be read as a number"],
    ["1.2.3", "held: cannot be read as a number"],
    ["call", "held: cannot be read as a number"],
    ["n/a", ""],
  ])("%s is %s with a decimal point", (text, number) => {
    expect(said(readLooseNumber(text, ".").reading)).toBe(number);
  });

  test.each([
    ["129,5", "129.5"],
    ["1.234,50", "1234.50"],
    ["1\u00a0234,50 €", "1234.50"],
    ["1.234", "1234"],
    ["12.50", "held: has a point where a number of this file with decimal comma cannot have one"],
    ["25,-", "25"],
  ])("%s is %s with a decimal comma", (text, number) => {
    expect(said(readLooseNumber(text, ",").reading)).toBe(number);
  });
});

describe("labour", () => {
  test.each([
    ["1.5", "hours", "90"],
    [".25", "hours", "15"],
    ["90", "minutes", "90"],
    ["1:30", "minutes", "90"],
    ["1h 30m", "minutes", "90"],
    ["1h30", "hours", "90"],
    ["90 min", "hours", "90"],
    ["1.5 h", "minutes", "90"],
    ["90", "hours", "held: would be 90 hours of work on one job"],
    ["$85.00", "hours", "held: is an amount of money, and this column holds working time"],
    ["-1", "hours", "held: is negative"],
    ["2 days", "hours", "held: has a unit that is no time"],
  ] as const)("%s in a file of %s is %s minutes", (text, unit, minutes) => {
    expect(said(readLooseLabour(text, unit, "."))).toBe(minutes);
  });
});
