import { expect, test } from "vitest";
import { countAtMost, countDistribution, countQuantile } from "@/lib/statistics/demand/count-distribution";
import { idleStock } from "@/lib/stock/idle-stock";

const plan = (mean: number) => {
  const demand = countDistribution({ mean, variance: mean });
  const twoYears = { chanceOfNone: countAtMost(demand, 0), expected: mean, enough: countQuantile(demand, 0.95) };
  return { twoYears, reorder: { kind: "nothing-to-bridge" } as const };
};

// By hand: of a Poisson demand of 2, 5 or fewer are needed 98.3 times in 100, 4 or fewer 94.7 times.
test("stock beyond the need of two years is too many", () => {
  expect(idleStock(plan(2), 9)).toEqual({ kind: "too-many", pieces: 4, enough: 5 });
  expect(idleStock(plan(2), 5)).toEqual({ kind: "in-use" });
});

// By hand: of a Poisson demand of 0.1 none is asked for 90.5 times in 100, of 0.25 only 77.9 times.
test("where none will most likely be asked for, all of it is dead", () => {
  expect(idleStock(plan(0.1), 9)).toEqual({ kind: "dead", pieces: 9 });
  expect(idleStock(plan(0.25), 9)).toEqual({ kind: "too-many", pieces: 8, enough: 1 });
});

test("nothing lies idle where nothing lies, or where no need is known", () => {
  expect(idleStock(plan(0.1), 0)).toEqual({ kind: "in-use" });
  expect(idleStock(plan(0.1), -3)).toEqual({ kind: "in-use" });
  expect(idleStock({ ...plan(0.1), reorder: { kind: "no-forecast" } }, 9)).toEqual({ kind: "in-use" });
});
