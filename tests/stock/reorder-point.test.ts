import { expect, test } from "vitest";
import { binomialDistribution } from "@/lib/statistics/demand/binomial-distribution";
import { countDistribution, countMean } from "@/lib/statistics/demand/count-distribution";
import { binomialProbability } from "@/lib/statistics/discrete/binomial";
import { demandBetween, monthDays } from "@/lib/stock/demand-between";
import { fixedLeadTime, knownLeadTime } from "@/lib/stock/lead-time";
import { type ReorderQuestion, reorderPoint } from "@/lib/stock/reorder-point";
import { twentyFutures } from "@/lib/stock/twenty-futures";
import { expectPrinted } from "@/tests/reference/read-reference";
import { randomSource } from "../statistics/random-source";

const random = randomSource(8);
const poissonPaths = (mean: number, rows: number) =>
  Array.from({ length: rows }, () => Array.from({ length: 6 }, () => random.poisson(mean)));

const asked: ReorderQuestion = {
  paths: poissonPaths(10, 40_000),
  goneDays: 0,
  leadTime: fixedLeadTime(monthDays),
  reviewDays: 0,
  service: 0.95,
};

function found(question: ReorderQuestion) {
  const point = reorderPoint(question);
  if (point.kind !== "reorder-point") throw new Error(point.kind);
  return point;
}

// Hopp & Spearman, Factory Physics, chapter 2 (N06; printed from memory): of a lead-time demand of ten, one for one,
// 15 is the first reorder point whose service reaches 95 %.
test("N06: a lead-time demand of ten needs a reorder point of 15 for 95 %", () => {
  const paths = [countDistribution({ mean: 10, variance: 10 })].flatMap((chances) =>
    [...chances].flatMap((chance, count) => new Array<number[]>(Math.round(chance * 100_000)).fill([count])),
  );
  const serviceAt = (service: number) => found({ ...asked, paths, service });
  const [low, middle, high] = [serviceAt(0.86), serviceAt(0.9), serviceAt(0.95)];
  expect([low.level, middle.level, high.level]).toEqual([13, 14, 15]);
  const short = (level: number) =>
    [...high.demand].reduce((sum, chance, k) => sum + chance * Math.max(0, k - level - 1), 0);
  const held = (level: number) => level + 1 - 10 + short(level);
  expectPrinted("N06", {
    fill_r13: low.service,
    backorders_r13: short(13),
    onhand_r13: held(13),
    fill_r14: middle.service,
    backorders_r14: short(14),
    onhand_r14: held(14),
    fill_r15: high.service,
    backorders_r15: short(15),
    onhand_r15: held(15),
  });
});

// By definition: a share of a Poisson count is Poisson with that share of the mean (Kingman 1993, Poisson Processes, 5.1).
test("part of a month needs part of its parts, with the spread of a Poisson count", () => {
  const between = demandBetween(asked.paths, { fromDay: 0.5 * monthDays, toDay: 1.75 * monthDays });
  if (between.kind !== "demand") throw new Error(between.kind);
  const mean = countMean(between.demand);
  const variance = [...between.demand].reduce((sum, chance, k) => sum + chance * (k - mean) ** 2, 0);
  expect(Math.abs(mean - 12.5)).toBeLessThan(0.06);
  expect(Math.abs(variance / 12.5 - 1)).toBeLessThan(0.03);
});

// Hadley & Whitin (1963), section 3-3: variance of demand in a random lead time is E L · σ² + μ² · Var L.
test("lead times that vary widen the demand and lift the reorder point", () => {
  const [week, month] = [monthDays / 4, monthDays];
  const leadTime = [
    { days: week, chance: 0.5 },
    { days: 2 * month - week, chance: 0.5 },
  ];
  const wide = found({ ...asked, leadTime });
  const variance = [...wide.demand].reduce((sum, chance, k) => sum + chance * (k - wide.expected) ** 2, 0);
  expect(Math.abs(wide.expected - 10)).toBeLessThan(0.1);
  expect(Math.abs(variance / (10 + 100 * 0.75 ** 2) - 1)).toBeLessThan(0.03);
  expect(wide.level).toBeGreaterThan(found(asked).level);
});

test("a lead time of zero needs stock only between two looks, and none where every use is looked at", () => {
  const none = { ...asked, leadTime: fixedLeadTime(0) };
  expect(reorderPoint(none)).toEqual({ kind: "nothing-to-bridge" });
  expect(found({ ...none, reviewDays: 7 }).level).toBeGreaterThan(0);
  expect(reorderPoint({ ...asked, leadTime: fixedLeadTime(200) })).toMatchObject({ kind: "beyond-forecast" });
  expect(() => reorderPoint({ ...asked, leadTime: [{ days: 3, chance: 0.5 }] })).toThrow(/leadTime/);
  expect(() => reorderPoint({ ...asked, leadTime: fixedLeadTime(-1) })).toThrow(/days/);
  expect(() => reorderPoint({ ...asked, service: 1 })).toThrow(/service/);
});

test("lead times are taken as they were from eight orders on, else as stated, else the longest", () => {
  expect(knownLeadTime([3, 5, 4, 3, 3, 9, 4, 4], 2)).toMatchObject({ kind: "observed", orders: 8 });
  expect(knownLeadTime([3, 5, 4, 3, 3, 9, 4], 2)).toEqual({ kind: "stated", leadTime: fixedLeadTime(2) });
  expect(knownLeadTime([3, 9], undefined)).toEqual({ kind: "few-orders", leadTime: fixedLeadTime(9), orders: 2 });
  expect(knownLeadTime([], undefined)).toEqual({ kind: "unknown" });
});

// By definition, with the chances of lib/statistics/discrete.
test.each([
  [7, 0.3],
  [2000, 0.001],
  [2000, 0.98],
])("binomial chances of %i at %f are those of the definition", (trials, chance) => {
  const chances = binomialDistribution(trials, chance);
  for (let k = 0; k <= trials; k += 1 + Math.floor(trials / 50)) {
    expect(chances[k]).toBeCloseTo(binomialProbability(k, { trials, chance }), 10);
  }
  expect(binomialDistribution(3, 1)[3]).toBe(1);
});

// By hand: of 0, 1, 2 … 19 each with one chance in twenty, the twenty futures are those numbers.
test("twenty futures are twenty equal chances", () => {
  const even = new Float64Array(20).fill(1 / 20);
  expect(twentyFutures(even)).toEqual(Array.from({ length: 20 }, (_, i) => i));
});

// By hand: a month of one repair that takes four, half of it gone: none or four are needed, never two.
test("what always goes by the four is needed by the four within a part of a month", () => {
  const found = demandBetween([[4, 0]], { fromDay: 0, toDay: monthDays / 2 });
  if (found.kind !== "demand") throw new Error(found.kind);
  expect([...found.demand]).toEqual([0.5, 0, 0, 0, 0.5]);
});
