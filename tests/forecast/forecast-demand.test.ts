import { expect, test } from "vitest";
import { backTest } from "@/lib/forecast/back-test";
import { demandMethods, forecastDemand, learnDemand } from "@/lib/forecast/forecast-demand";
import { lotOf } from "@/lib/forecast/in-lots";
import { demandPaths, sumOfPaths } from "@/lib/forecast/paths";
import { pooledHistories } from "@/lib/forecast/supersession";
import { countMean } from "@/lib/statistics/demand/count-distribution";
import { randomSource } from "../statistics/random-source";

const random = randomSource(21);
const parts = Array.from({ length: 30 }, (_, part) =>
  Array.from({ length: 36 }, () => random.poisson(0.2 + 0.1 * part)),
);
const knowledge = learnDemand(parts);
const ask = { horizon: 6, knowledge };
const at = (i: number) => parts[i] ?? [];

test("a forecast has a distribution for each month, near the mean that the months were drawn with", () => {
  const forecast = forecastDemand(at(20), ask);
  if (forecast.kind !== "forecast") throw new Error("36 months are known");
  expect(forecast).toMatchObject({ basis: "tested" });
  expect(forecast.months).toHaveLength(6);
  expect(Math.abs((forecast.months[0]?.mean ?? 0) - 2.2)).toBeLessThan(0.8);
  expect(forecast.reason).toMatch(/starting points/);
  const paths = demandPaths(forecast.future, { horizon: 6, futures: 3000, seed: 1 });
  const months = forecast.months.reduce((sum, month) => sum + month.mean, 0);
  expect(Math.abs(countMean(sumOfPaths(paths, 6)) / months - 1)).toBeLessThan(0.05);
});

test("what is weak about a history is named, with a forecast where there is one", () => {
  expect(forecastDemand([], ask)).toEqual({ kind: "no-months" });
  expect(forecastDemand([undefined], ask)).toEqual({ kind: "no-months" });
  expect(forecastDemand([3], ask)).toMatchObject({ kind: "forecast", basis: "few-months" });
  const never = forecastDemand(new Array<number>(30).fill(0), ask);
  expect(never).toMatchObject({ kind: "forecast", basis: "never-used" });
  expect(never.kind === "forecast" && (never.months[0]?.mean ?? 0) > 0).toBe(true);
  expect(() => forecastDemand([1], { ...ask, horizon: 25 })).toThrow(/horizon/);
  expect(() => forecastDemand([-1], ask)).toThrow(/history\[0\]/);
});

test("a part beyond the ladders is forecast from its own level", () => {
  const busy = forecastDemand(
    Array.from({ length: 30 }, () => random.poisson(900)),
    ask,
  );
  expect(busy).toMatchObject({ kind: "forecast", method: "own-level" });
});

// No peeking: what a method says from an origin may not change with the months from that origin on.
test("months from the origin on never change a forecast made before them", () => {
  const changed = at(9).map((count, month) => (month >= 30 ? count + 7 : count));
  for (const method of demandMethods(knowledge.now)) {
    const [one, other] = [method.prepare(at(9))(30).months(3), method.prepare(changed)(30).months(3)];
    expect(other, method.key).toEqual(one);
  }
});

test("a back-test needs a year and one month, and judges each known month after each origin", () => {
  const methods = demandMethods(undefined);
  expect(backTest(at(1).slice(0, 12), { methods, origins: 3, horizon: 2 })).toMatchObject({ kind: "too-short" });
  const test = backTest(at(1), { methods, origins: 3, horizon: 2 });
  // Origins 33, 34, 35 of 36 months: two, two and one month after them.
  expect(test).toMatchObject({ kind: "tested", origins: 3, months: 5 });
});

// By hand: what goes by the four is never needed by the three, and the bands of its months hold what was used.
test("a part that is always used by the four is forecast by the four", () => {
  const fours = at(15).map((count) => 4 * count);
  expect([lotOf(fours), lotOf([...fours, 1]), lotOf([4, 0, 8]), lotOf([])]).toEqual([4, 1, 1, 1]);
  const forecast = forecastDemand(fours, { horizon: 3, knowledge: learnDemand([...parts, fours]) });
  if (forecast.kind !== "forecast" || forecast.test.kind !== "tested") throw new Error("36 months are known");
  const [month] = forecast.months;
  expect(month?.distribution.every((chance, count) => count % 4 === 0 || chance === 0)).toBe(true);
  expect((month?.band90.low ?? 1) % 4).toBe(0);
  expect(forecast.test.methods.find(({ key }) => key === "shared-levels")?.inside90).toBeGreaterThan(0.8);
});

// By hand: A → B → C, shorter histories begin later.
test("superseded numbers pool their months; circles and forks are refused by name", () => {
  const histories = new Map<string, (number | undefined)[]>([
    ["A", [5, 1, undefined]],
    ["B", [2, undefined]],
    ["C", [4]],
  ]);
  const pooled = pooledHistories(histories, [
    { from: "A", to: "B" },
    { from: "B", to: "C" },
  ]);
  expect(pooled.kind === "pooled" && pooled.histories.get("C")).toEqual([5, 3, 4]);
  expect(
    pooledHistories(histories, [
      { from: "A", to: "B" },
      { from: "B", to: "A" },
    ]),
  ).toEqual({
    kind: "circle",
    parts: ["A", "B"],
  });
  expect(
    pooledHistories(histories, [
      { from: "A", to: "B" },
      { from: "A", to: "C" },
    ]),
  ).toMatchObject({ part: "A" });
});
