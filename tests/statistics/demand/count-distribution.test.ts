import { expect, test } from "vitest";
import { countBand, shareInsideCentral } from "@/lib/statistics/demand/count-band";
import {
  countDistribution,
  countMean,
  countQuantile,
  empiricalDistribution,
} from "@/lib/statistics/demand/count-distribution";
import { negativeBinomialAtMost } from "@/lib/statistics/discrete/negative-binomial";
import { poissonAtMost } from "@/lib/statistics/discrete/poisson";

const atMost = (distribution: Float64Array, count: number) =>
  distribution.slice(0, count + 1).reduce((sum, chance) => sum + chance, 0);

// Against separate code: tails by the incomplete gamma and beta functions, themselves held to R.
test.each([0.03, 1, 7.5, 900])(
  "chances of a count of mean %d add up to the tails of Poisson and negative binomial",
  (mean) => {
    for (const count of [0, Math.floor(mean), Math.ceil(2 * mean) + 1]) {
      expect(atMost(countDistribution({ mean, variance: mean }), count)).toBeCloseTo(poissonAtMost(count, mean), 8);
      const shape = { mean, size: 0.8 };
      const bunched = countDistribution({ mean, variance: mean + mean ** 2 / 0.8 });
      expect(atMost(bunched, count)).toBeCloseTo(negativeBinomialAtMost(count, shape), 7);
    }
    expect(countMean(countDistribution({ mean, variance: 3 * mean }))).toBeCloseTo(mean, 6);
  },
);

// By hand: 0 with 0.7, 1 with 0.18, 2 with 0.12. To 90 %: 0.88 is nearer than 1; to 60 %: 0.7 alone.
test("a band is the run of counts whose share is nearest to the wanted one", () => {
  const distribution = Float64Array.of(0.7, 0.18, 0.12);
  expect(countBand(distribution, 0.9)).toMatchObject({ low: 0, high: 1 });
  expect(countBand(distribution, 0.6)).toMatchObject({ low: 0, high: 0 });
  expect(countBand(Float64Array.of(0.1, 0.2, 0.4, 0.2, 0.1), 0.8)).toMatchObject({ low: 1, high: 3 });
  expect(() => countBand(distribution, 1)).toThrow(/level/);
});

// By hand: the central 90 % runs from 0.05 to 0.95; a 0 covers 0..0.7 of which 0.65 lies inside, a 2 covers 0.88..1.
test("the share inside the central range spreads each count over its step, and averages to the level", () => {
  const distribution = Float64Array.of(0.7, 0.18, 0.12);
  expect(shareInsideCentral(distribution, 0.9, 0)).toBeCloseTo(0.65 / 0.7, 12);
  expect(shareInsideCentral(distribution, 0.9, 2)).toBeCloseTo(0.07 / 0.12, 12);
  const mean = [0, 1, 2].reduce((sum, k) => sum + (distribution[k] ?? 0) * shareInsideCentral(distribution, 0.9, k), 0);
  expect(mean).toBeCloseTo(0.9, 12);
});

test("quantiles of a list are its order statistics", () => {
  const distribution = empiricalDistribution([4, 0, 0, 1]);
  expect([0.5, 0.51, 0.75, 0.76].map((p) => countQuantile(distribution, p))).toEqual([0, 1, 1, 4]);
  expect(() => empiricalDistribution([])).toThrow(/counts/);
});
