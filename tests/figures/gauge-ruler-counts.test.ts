import { describe, expect, test } from "vitest";
import { addDays, day } from "@/lib/calendar/day";
import { dayRuler } from "@/lib/figures/day-ruler";
import { readingGauge } from "@/lib/figures/reading-gauge";

describe("reading gauge", () => {
  const ohms = (low: number | undefined, high: number | undefined) => ({ low, high, unit: "ohm" });

  test("stands a reading where it lies between the brackets", () => {
    expect(readingGauge(ohms(10, 20), 15)).toMatchObject({ from: 0.25, to: 0.75, reading: { at: 0.5 } });
    expect(readingGauge(ohms(10, 20), 10)).toMatchObject({ reading: { at: 0.25, beyond: undefined } });
  });

  test("keeps a reading a thousand times too high on the drawing, with an arrow", () => {
    expect(readingGauge(ohms(10, 20), 12_000)).toMatchObject({ reading: { at: 0.97, beyond: "right" } });
    expect(readingGauge(ohms(10, 20), -500)).toMatchObject({ reading: { at: 0.03, beyond: "left" } });
  });

  test("leaves an open end open", () => {
    expect(readingGauge(ohms(1_000_000, undefined), undefined)).toMatchObject({
      from: 0.5,
      to: 1,
      lowOpen: false,
      highOpen: true,
      reading: undefined,
    });
    expect(readingGauge(ohms(undefined, 5), 2)).toMatchObject({ from: 0, to: 0.5, lowOpen: true });
  });

  test("draws a single expected value and a range below zero", () => {
    expect(readingGauge(ohms(12, 12), 12)).toMatchObject({ from: 0.5, to: 0.5, reading: { at: 0.5 } });
    expect(readingGauge(ohms(-20, -16), -18)).toMatchObject({ reading: { at: 0.5 } });
  });

  test("without any range has nothing to draw against", () => {
    expect(readingGauge(ohms(undefined, undefined), 5)).toEqual({ kind: "no-range" });
  });
});

describe("day ruler", () => {
  const from = day("2025-11-10");
  const due = day("2025-12-09");

  test("has one cell a day, first and last included, and marks the last", () => {
    const { cells } = dayRuler({ from, due, today: from });
    expect(cells).toHaveLength(30);
    expect(cells.at(-1)).toBe("due");
    expect(cells.filter((cell) => cell === "elapsed")).toHaveLength(0);
  });

  test("counts a day as gone from the next day on", () => {
    const gone = (today: string) =>
      dayRuler({ from, due, today: day(today) }).cells.filter((cell) => cell.includes("elapsed")).length;
    expect([gone("2025-11-11"), gone("2025-12-09"), gone("2025-12-10")]).toEqual([1, 29, 30]);
  });

  test("says the day and what is left of it in words", () => {
    expect(dayRuler({ from, due, today: day("2025-12-01") }).words).toBe("Tue 9 Dec 2025, 8 days left");
    expect(dayRuler({ from, due, today: due }).words).toBe("Tue 9 Dec 2025, last day today");
    expect(dayRuler({ from, due, today: addDays(due, 1) }).words).toBe("Tue 9 Dec 2025, 1 day over");
  });

  test("shows the last 60 days of a longer window", () => {
    const long = dayRuler({ from: day("2025-01-01"), due, today: addDays(due, -10) });
    expect(long.cells).toHaveLength(60);
    expect(long.cells.filter((cell) => cell === "elapsed")).toHaveLength(49);
  });

  test("that ends before it begins is the caller's mistake", () => {
    expect(() => dayRuler({ from: due, due: from, today: due })).toThrow(RangeError);
  });
});
