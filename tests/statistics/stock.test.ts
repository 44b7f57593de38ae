import { expect, test } from "vitest";
import { baseStock } from "@/lib/statistics/stock/base-stock";
import { newsvendor } from "@/lib/statistics/stock/newsvendor";
import { poissonLoss } from "@/lib/statistics/stock/poisson-loss";
import { cheapestReorderPolicy, reorderMeasures } from "@/lib/statistics/stock/reorder-quantity";
import { expectClose, expectPrinted } from "@/tests/reference/read-reference";

// Porteus (2002), quoted in a package reference page: read.
test("N01: one period of normal demand, price 4, cost 1", () => {
  const demand = { kind: "normal", mean: 100, standardDeviation: 30 } as const;
  const { level, expectedCost, fill } = newsvendor({ overage: 1, underage: 3, demand });
  expectPrinted("N01", {
    Q: level,
    exp_cost: expectedCost,
    exp_profit: (4 - 1) * 100 - expectedCost,
    fill: fill.kind === "share" ? fill.share : -1,
  });
});

// Snyder & Shen (2019), example 4.3: read in a package's doctests.
test("N03: one period of normal and of Poisson demand", () => {
  const costs = { overage: 0.18, underage: 0.7 };
  const normal = newsvendor({ ...costs, demand: { kind: "normal", mean: 50, standardDeviation: 8 } });
  const poisson = newsvendor({ ...costs, demand: { kind: "poisson", mean: 50 } });
  expectPrinted("N03", {
    normal_S: normal.level,
    normal_cost: normal.expectedCost,
    poisson_S: poisson.level,
    poisson_cost: poisson.expectedCost,
  });
});

const example = { costs: { holding: 20, stockout: 150, fixed: 100 }, demandRate: 1.5, leadTime: 2 };

// Snyder & Shen (2019), example 5.8; Federgruen & Zheng (1992): read in a package's doctests.
test("N05: cost of reordering 5 at 3", () => {
  const { costPerTime } = reorderMeasures({ ...example, reorderPoint: 3, quantity: 5 });
  expectPrinted("N05", { cost_r3_Q5: costPerTime });
});

// By definition: no policy in a wide neighbourhood is cheaper.
test.each([example, { costs: { holding: 1, stockout: 9, fixed: 40 }, demandRate: 12, leadTime: 0.7 }])(
  "the cheapest policy is cheaper than every other: %o",
  (input) => {
    const best = cheapestReorderPolicy(input);
    expectClose(reorderMeasures({ ...input, ...best }).costPerTime, best.costPerTime, 1e-10);
    for (let reorderPoint = best.reorderPoint - 12; reorderPoint <= best.reorderPoint + 12; reorderPoint++) {
      for (let quantity = 1; quantity <= best.quantity + 20; quantity++) {
        const { costPerTime } = reorderMeasures({ ...input, reorderPoint, quantity });
        expect(costPerTime).toBeGreaterThanOrEqual(best.costPerTime - 1e-9);
      }
    }
  },
);

// Hopp & Spearman, Factory Physics, chapter 2: printed table from memory or recomputed; fill-rate definition read.
test("N06: base stock for a lead-time demand of ten", () => {
  const results = [13, 14, 15].flatMap((r) => {
    const { fillRate, backorders, onHand } = baseStock({ level: r + 1, leadTimeDemand: 10 });
    return [
      [`fill_r${r}`, fillRate],
      [`backorders_r${r}`, backorders],
      [`onhand_r${r}`, onHand],
    ] as const;
  });
  expectPrinted("N06", Object.fromEntries(results));
});

// By definition: Σ (k − S)⁺ P(k), by separate code.
test.each([
  [0, 3.3],
  [2, 3.3],
  [9, 3.3],
  [-2, 3.3],
  [4, 0],
])("what a level of %i leaves short of a mean of %d", (level, mean) => {
  let probability = Math.exp(-mean);
  let shortage = 0;
  let leftover = 0;
  for (let k = 0; k < 80; k++) {
    shortage += Math.max(0, k - level) * probability;
    leftover += Math.max(0, level - k) * probability;
    probability *= mean / (k + 1);
  }
  expect(poissonLoss(level, mean).shortage).toBeCloseTo(shortage, 12);
  expect(poissonLoss(level, mean).leftover).toBeCloseTo(leftover, 12);
});

// One-for-one replenishment is the reorder policy with a quantity of one.
test("base stock equals reordering one at a time", () => {
  const one = reorderMeasures({ ...example, reorderPoint: 4, quantity: 1 });
  const base = baseStock({ level: 5, leadTimeDemand: 3 });
  expect(one).toMatchObject({
    ...base,
    costPerTime: expect.closeTo(150 + 20 * base.onHand + 150 * base.backorders, 10),
  });
});

test("bad arguments throw, and no demand has no share met", () => {
  expect(newsvendor({ overage: 1, underage: 1, demand: { kind: "poisson", mean: 0 } })).toMatchObject({
    level: 0,
    fill: { kind: "no-demand" },
  });
  expect(() => newsvendor({ overage: 0, underage: 1, demand: { kind: "poisson", mean: 1 } })).toThrow(/overage/);
  expect(() => reorderMeasures({ ...example, reorderPoint: 0.5, quantity: 1 })).toThrow(/reorderPoint/);
  expect(() => reorderMeasures({ ...example, reorderPoint: 1, quantity: 0 })).toThrow(/quantity/);
  expect(() => baseStock({ level: 2, leadTimeDemand: 0 })).toThrow(/leadTimeDemand/);
});
