import { describe, expect, test } from "vitest";
import { day } from "@/lib/calendar/day";
import { formatCount, formatCounted } from "@/lib/format/format-count";
import { formatDay, formatDaysLeft, formatPlainDay } from "@/lib/format/format-day";
import { formatDecimal, formatExposure } from "@/lib/format/format-decimal";
import { formatMoney } from "@/lib/format/format-money";
import { describeAgainstRange, formatOutcome, formatRange } from "@/lib/format/format-reading";

describe("days", () => {
  // Weekdays by the calendar: 1 Jan 2000 was a Saturday, 29 Feb 2024 a Thursday, 2 Dec 2025 a Tuesday.
  test.each([
    ["2025-12-02", "Tue 2 Dec 2025"],
    ["2000-01-01", "Sat 1 Jan 2000"],
    ["2024-02-29", "Thu 29 Feb 2024"],
  ])("%s is %s", (iso, text) => {
    expect(formatDay(day(iso))).toBe(text);
    expect(`${formatDay(day(iso))}`.endsWith(formatPlainDay(day(iso)))).toBe(true);
  });

  test("days left change their words on the last day and after it", () => {
    expect([2, 1, 0, -1, -3].map(formatDaysLeft)).toEqual([
      "2 days left",
      "1 day left",
      "last day today",
      "1 day over",
      "3 days over",
    ]);
  });
});

describe("money", () => {
  test("is the code and every cent", () => {
    expect(formatMoney({ cents: 123_450, currency: "USD" })).toBe("USD 1,234.50");
    expect(formatMoney({ cents: 5, currency: "EUR" })).toBe("EUR 0.05");
    expect(formatMoney({ cents: -1999, currency: "CAD" })).toBe("-CAD 19.99");
  });

  test("stays exact at ten thousand million", () => {
    expect(formatMoney({ cents: 1_000_000_000_001, currency: "GBP" })).toBe("GBP 10,000,000,000.01");
  });

  test("in parts of a cent is a mistake", () => {
    expect(() => formatMoney({ cents: 0.5, currency: "USD" })).toThrow("cents must be a whole number; it is 0.5");
  });
});

describe("counts", () => {
  test("mark thousands and agree with their noun", () => {
    expect(formatCount(1_234_567)).toBe("1,234,567");
    expect([0, 1, 2].map((count) => formatCounted(count, "job"))).toEqual(["0 jobs", "1 job", "2 jobs"]);
    expect(formatCounted(2, "battery", "batteries")).toBe("2 batteries");
  });

  test("that are no numbers are mistakes", () => {
    expect(() => formatCount(Number.NaN)).toThrow(RangeError);
    expect(() => formatDecimal(1, 9)).toThrow("decimals");
  });

  test("exposure keeps what its size bears", () => {
    expect([1234.4, 10, 9.96, 6.2, 0.42, 0.001].map(formatExposure)).toEqual([
      "1,234",
      "10",
      "10.0",
      "6.2",
      "0.42",
      "under 0.01",
    ]);
  });
});

describe("readings", () => {
  const range = { low: 10, high: 20, unit: "ohm" };

  test("both ends of a range belong to it", () => {
    expect([10, 20].map((value) => describeAgainstRange(value, range))).toEqual(["Inside 10–20 Ω", "Inside 10–20 Ω"]);
  });

  test("outside says by how much, without the dirt of binary fractions", () => {
    expect(describeAgainstRange(7.9, range)).toBe("Below by 2.1 Ω");
    expect(describeAgainstRange(20.3, range)).toBe("Above by 0.3 Ω");
  });

  test("an open end is said in words", () => {
    expect(formatRange({ low: 1_000_000, high: undefined, unit: "ohm" })).toBe("1,000,000 Ω or more");
    expect(formatRange({ low: undefined, high: 5, unit: "ohm" })).toBe("up to 5 Ω");
    expect(describeAgainstRange(3, { low: undefined, high: undefined, unit: "ohm" })).toBe(
      "No expected range to compare with",
    );
  });

  test("states are words, not numbers", () => {
    expect(formatOutcome({ kind: "open" })).toBe("Open (OL)");
    expect(formatOutcome({ kind: "number", value: 12.5, unit: "kohm" })).toBe("12.5 kΩ");
    expect(formatOutcome({ kind: "code", code: "F21" })).toBe("Code F21");
  });
});
