import { expect, test } from "vitest";
import { countMean } from "@/lib/statistics/demand/count-distribution";
import { discountedForecast, discountedLevel, discountedPath } from "@/lib/statistics/demand/discounted-level";
import { seededDraws } from "@/lib/statistics/demand/seeded-draws";
import { negativeBinomialProbability } from "@/lib/statistics/discrete/negative-binomial";

const months = [3, 0, 2].map((count) => ({ count, exposure: 1 }));

// By hand: shape 1, exposure 1; 3 → 4, 2; halved 2, 1; 0 → 2, 2; halved 1, 1; 2 → 3, 2.
test("a level forgets by its discount and adds what it sees", () => {
  const level = discountedLevel({ months, prior: { shape: 1, exposure: 1 }, discount: 0.5, dispersion: 1 });
  expect(level).toMatchObject({ shape: 3, exposure: 2 });
});

// Closed form of the gamma-Poisson: after 5 events in 3 months from a gamma(1, 1), negative binomial of size 6, mean 6/4.
test("without discount the forecast is the closed form of a fixed rate", () => {
  const level = discountedLevel({ months, prior: { shape: 1, exposure: 1 }, discount: 1, dispersion: 1 });
  const [first] = discountedForecast(level, [1]);
  for (const count of [0, 1, 5])
    expect(first?.[count]).toBeCloseTo(negativeBinomialProbability(count, { size: 6, mean: 1.5 }), 10);
});

test("drawn futures have the mean and the spread of the forecast, month by month", () => {
  const level = discountedLevel({ months, prior: { shape: 4, exposure: 2 }, discount: 0.8, dispersion: 2 });
  const forecast = discountedForecast(level, [1, 1, 1.5]);
  const draws = seededDraws(9);
  const paths = Array.from({ length: 40_000 }, () => discountedPath(level, [1, 1, 1.5], draws));
  for (const [month, distribution] of forecast.entries()) {
    const counts = paths.map((path) => path[month] ?? 0);
    const mean = counts.reduce((sum, count) => sum + count, 0) / counts.length;
    const variance = counts.reduce((sum, count) => sum + (count - mean) ** 2, 0) / counts.length;
    const expected = countMean(distribution);
    const spread = distribution.reduce((sum, chance, k) => sum + chance * (k - expected) ** 2, 0);
    expect(Math.abs(mean / expected - 1)).toBeLessThan(0.03);
    expect(Math.abs(variance / spread - 1)).toBeLessThan(0.06);
  }
});
