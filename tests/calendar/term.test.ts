import { Temporal } from "temporal-polyfill";
import { expect, test } from "vitest";
import { addDays, day, daysBetween } from "@/lib/calendar/day";
import { exactly, lastCoveredDays, monthRange } from "@/lib/calendar/day-range";
import { type CountedTerm, countedUnits, lastCoveredDay } from "@/lib/calendar/term";
import { seeded } from "./seeded";

const random = seeded(19_810_101);

function randomTerm(): CountedTerm {
  return { n: 1 + random(36), unit: countedUnits[random(3)] ?? "day" };
}

const rounds = Array.from({ length: 20_000 }, () => ({
  start: addDays(day("1990-01-01"), random(22_000)),
  term: randomTerm(),
}));

// Another library's results, each convention written out beside it. Corresponding date: Dodds v Walker [1981] UKHL.
test("20,000 random terms end where Temporal's arithmetic ends them, under both conventions", () => {
  for (const { start, term } of rounds) {
    const anchor = Temporal.PlainDate.from(start);
    const end = anchor.add({ [`${term.unit}s`]: term.n }, { overflow: "constrain" });
    const isClamped = term.unit !== "day" && end.day !== anchor.day;
    expect(lastCoveredDay(start, term, "exclude")).toBe(end.toString());
    expect(lastCoveredDay(start, term, "include")).toBe((isClamped ? end : end.subtract({ days: 1 })).toString());
  }
});

test("a longer term never ends earlier, and a later start never ends earlier", () => {
  for (const { start, term } of rounds) {
    for (const anchorDay of ["exclude", "include"] as const) {
      const last = lastCoveredDay(start, term, anchorDay);
      expect(lastCoveredDay(start, { ...term, n: term.n + 1 }, anchorDay) > last).toBe(true);
      if (anchorDay === "exclude") expect(lastCoveredDay(addDays(start, 1), term, anchorDay) >= last).toBe(true);
    }
  }
});

test("the two conventions differ by one day, and not at all where the month had to be shortened", () => {
  let clamped = 0;
  for (const { start, term } of rounds) {
    const [excluded, included] = [lastCoveredDay(start, term, "exclude"), lastCoveredDay(start, term, "include")];
    const isShortened = term.unit !== "day" && excluded.slice(8) !== start.slice(8);
    if (isShortened) clamped++;
    expect(daysBetween(day(included), day(excluded))).toBe(isShortened ? 0 : 1);
  }
  expect(clamped).toBeGreaterThan(50);
});

test("twelve months are one year, and 365 days are not where a leap day lies between", () => {
  for (const { start } of rounds.slice(0, 2000)) {
    const year = lastCoveredDay(start, { n: 1, unit: "year" }, "exclude");
    expect(lastCoveredDay(start, { n: 12, unit: "month" }, "exclude")).toBe(year);
  }
  expect(lastCoveredDay(day("2023-06-01"), { n: 365, unit: "day" }, "exclude")).toBe("2024-05-31");
});

test("a start known by its month carries both ends", () => {
  const last = lastCoveredDays(monthRange(2024, 2), { n: 1, unit: "year" }, "exclude");
  expect(last).toEqual({ earliest: "2025-02-01", latest: "2025-02-28" });
  expect(lastCoveredDays(exactly(day("2024-02-29")), { unit: "lifetime" }, "exclude").latest).toBe("lifetime");
});

test.each([0, -1, 1.5])("a term of %s is a caller's mistake", (n) => {
  expect(() => lastCoveredDay(day("2024-01-01"), { n, unit: "month" }, "exclude")).toThrow(RangeError);
});
