import { expect, test } from "vitest";
import { day } from "@/lib/calendar/day";
import { DemandSum } from "@/lib/forecast/demand-sum";
import { forecastMonth, goneDays } from "@/lib/forecast/forecast-month";
import { packedFutures, unpackedFutures } from "@/lib/forecast/packed-futures";
import { partFamilies } from "@/lib/forecast/part-families";
import { minimalStandard } from "../minimal-standard";

test("futures come out of their bytes as they went in", () => {
  const random = minimalStandard(7);
  const paths = Array.from({ length: 30 }, () => Array.from({ length: 24 }, () => Math.floor(300 * random() ** 4)));
  expect(unpackedFutures(packedFutures(paths), 24)).toEqual(paths);
  expect(unpackedFutures(packedFutures([[70_000]]), 1)).toEqual([[65_535]]);
  expect(() => packedFutures([[1, 2], [1]])).toThrow(RangeError);
});

// By definition: each future of the whole is the sum of that future of its parts, so that opposite parts cancel.
test("a whole is as sure as its sums, not as its parts together", () => {
  const up = Array.from({ length: 100 }, (_, i) => [i, i]);
  const down = Array.from({ length: 100 }, (_, i) => [99 - i, 99 - i]);
  const sum = new DemandSum(100, 2);
  sum.add({ paths: up, unitCents: 10 });
  sum.add({ paths: down, unitCents: 10 });
  sum.add({ paths: up, unitCents: undefined });
  const { parts, withoutCost, months, year } = sum.total();
  expect([parts, withoutCost]).toEqual([3, 1]);
  expect(months[0]?.cents).toEqual({ mean: 990, low60: 990, high60: 990, low90: 990, high90: 990 });
  expect(year.cents.mean).toBe(1980);
  expect(months[1]?.pieces).toMatchObject({ low90: 99 + 4, high90: 99 + 94 });
  const whole = new DemandSum(100, 2);
  whole.include(sum);
  expect(whole.total()).toEqual(sum.total());
  expect(() => whole.include(new DemandSum(100, 3))).toThrow(RangeError);
});

test.each([
  ["2026-10-30", "2026-10-01", 29],
  ["2026-10-31", "2026-11-01", 0], // its month is history
  ["2026-11-01", "2026-11-01", 0],
  ["2024-02-28", "2024-02-01", 27],
  ["2024-02-29", "2024-03-01", 0],
])("on %s the forecast begins with %s, of which %i days are gone", (today, first, gone) => {
  expect(forecastMonth(day(today))).toBe(first);
  expect(goneDays(forecastMonth(day(today)), day(today))).toBe(gone);
});

test("a circle of numbers is left out and named, and all others are still counted together", () => {
  const links = [
    { from: "A", to: "B" },
    { from: "B", to: "C" },
    { from: "X", to: "Y" },
    { from: "Y", to: "X" },
    { from: "P", to: "Q" },
    { from: "P", to: "R" },
  ];
  const { currentOf, problems } = partFamilies(links, (part) => `no. ${part}`);
  expect(["A", "B", "C", "X", "Y", "P"].map(currentOf)).toEqual(["C", "C", "C", "X", "Y", "P"]);
  expect(problems.map(({ sentence }) => sentence).toSorted()).toEqual([
    "These numbers supersede each other in a circle: no. X → no. Y → no. X. Each is forecast from its own use until the catalogue says which is the newest.",
    "no. P is superseded by no. Q and no. R, which cannot both be. It is forecast from its own use until the catalogue names one.",
  ]);
});
