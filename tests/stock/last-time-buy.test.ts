import { expect, test } from "vitest";
import { countDistribution } from "@/lib/statistics/demand/count-distribution";
import { poissonAtMost } from "@/lib/statistics/discrete/poisson";
import { newsvendor } from "@/lib/statistics/stock/newsvendor";
import { type LastTimeBuyQuestion, lastTimeBuy } from "@/lib/stock/last-time-buy";

const demand = countDistribution({ mean: 30, variance: 30 });
const asked: LastTimeBuyQuestion = {
  demand,
  onHand: 4,
  unitCents: 1000,
  aim: { kind: "service", service: 0.95 },
  pack: 1,
};

// By definition: 39 is the first count that a Poisson 30 stays at or below 95 times in 100.
test("the buy lasts to the end as surely as asked, with what is on hand, in whole packs", () => {
  expect(poissonAtMost(38, 30)).toBeLessThan(0.95);
  const buy = lastTimeBuy(asked);
  expect(buy).toMatchObject({ pieces: 35, cents: 35_000, low: 21, high: 39 });
  expect(buy.lasts).toBeCloseTo(poissonAtMost(39, 30), 9);
  expect(buy.expectedLeftover - buy.expectedShort).toBeCloseTo(39 - 30, 8);
  expect(lastTimeBuy({ ...asked, pack: 10 }).pieces).toBe(40);
  expect(lastTimeBuy({ ...asked, onHand: 60 }).pieces).toBe(0);
});

// Separate code: with nothing on hand it is the newsvendor with overage price + leftover and underage short − price.
test("with costs it is the newsvendor's level", () => {
  const buy = lastTimeBuy({ ...asked, onHand: 0, aim: { kind: "costs", leftoverCents: 200, shortCents: 6000 } });
  const { level } = newsvendor({ overage: 1200, underage: 5000, demand: { kind: "poisson", mean: 30 } });
  expect(buy.pieces).toBe(level);
});

// By definition: every number of packs is tried.
test.each([3, 7, 25])("no other number of packs of %i costs less", (pack) => {
  const aim = { kind: "costs", leftoverCents: 100, shortCents: 3500 } as const;
  const cost = (packs: number) =>
    [...demand].reduce(
      (sum, chance, k) => {
        const left = 4 + packs * pack - k;
        return sum + chance * (left > 0 ? 100 * left : -3500 * left);
      },
      packs * pack * 1000,
    );
  const best = lastTimeBuy({ ...asked, aim, pack });
  const least = Math.min(...Array.from({ length: 40 }, (_, packs) => cost(packs)));
  expect(cost(best.pieces / pack)).toBeCloseTo(least, 6);
});

test("where a shortage costs no more than the part, none is bought", () => {
  expect(lastTimeBuy({ ...asked, aim: { kind: "costs", leftoverCents: 0, shortCents: 1000 } }).pieces).toBe(0);
  expect(() => lastTimeBuy({ ...asked, aim: { kind: "service", service: 1 } })).toThrow(/service/);
});
