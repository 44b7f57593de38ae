import { expect, test } from "vitest";
import { compoundDistribution } from "@/lib/statistics/demand/compound-distribution";
import { countDistribution, countMean } from "@/lib/statistics/demand/count-distribution";

// By hand: none, one or two repairs at 0.5, 0.3, 0.2; each takes 1 piece at 0.75 or 3 at 0.25.
test("pieces are what so many repairs take together", () => {
  const pieces = compoundDistribution(Float64Array.of(0.5, 0.3, 0.2), [
    { each: 1, chance: 0.75 },
    { each: 3, chance: 0.25 },
  ]);
  const byHand = [0.5, 0.3 * 0.75, 0.2 * 0.75 ** 2, 0.3 * 0.25, 0.2 * 2 * 0.75 * 0.25, 0, 0.2 * 0.25 ** 2];
  for (const [k, chance] of byHand.entries()) expect(pieces[k]).toBeCloseTo(chance, 12);
});

// By definition: mean λ E(q), variance λ E(q²) of a compound Poisson count.
test("a compound Poisson count has its mean and variance", () => {
  const repairs = countDistribution({ mean: 6, variance: 6 });
  const pieces = compoundDistribution(repairs, [
    { each: 2, chance: 0.4 },
    { each: 5, chance: 0.6 },
  ]);
  expect(countMean(pieces)).toBeCloseTo(6 * 3.8, 6);
  const square = pieces.reduce((sum, chance, k) => sum + chance * k * k, 0);
  expect(square - countMean(pieces) ** 2).toBeCloseTo(6 * (0.4 * 4 + 0.6 * 25), 4);
});

test("four at a time are never three, and no piece at all is the caller's mistake", () => {
  expect([...compoundDistribution(Float64Array.of(0.5, 0.5), [{ each: 4, chance: 1 }])]).toEqual([0.5, 0, 0, 0, 0.5]);
  expect(() => compoundDistribution(Float64Array.of(1), [{ each: 0, chance: 1 }])).toThrow(/each\[0\]/);
});
