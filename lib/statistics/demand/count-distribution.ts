import { requireNonNegative, requirePositive, requireProbability } from "../require";

/**
 * Chances of 0, 1, 2 … of something, together 1: a whole predictive distribution of a count. What lies beyond the end
 * of the array has no chance that could show.
 */
export type CountDistribution = Float64Array;

/** Chance, next to the likeliest count, below which a count is left out. */
const negligible = 1e-11;

/**
 * Counts with a mean and a variance: Poisson where the variance does not exceed the mean, else negative binomial.
 * Built outward from the likeliest count by ratios of neighbours, so that nothing underflows at large means.
 * @param mean     0 or more
 * @param variance 0 or more; anything up to the mean gives Poisson
 * @throws RangeError for an argument outside its range
 * Source: Johnson, Kemp & Kotz (2005), Univariate Discrete Distributions, sections 4.2 and 5.2.
 * Checked: tests/statistics/demand/count-distribution.test.ts, against the tails in `discrete`.
 */
export function countDistribution({ mean, variance }: CountMoments): CountDistribution {
  requireNonNegative("mean", mean);
  requireNonNegative("variance", variance);
  if (mean === 0) return Float64Array.of(1);
  const bunched = variance > mean * (1 + 1e-9);
  const size = bunched ? (mean * mean) / (variance - mean) : 0;
  // The chance of k + 1 over that of k is (a + b k) / (k + 1).
  const b = bunched ? mean / (size + mean) : 0;
  const a = bunched ? size * b : mean;
  const mode = bunched ? Math.max(0, Math.floor(mean * (1 - 1 / size))) : Math.floor(mean);
  const up = [1];
  for (let k = mode, part = 1; part > negligible; k++) {
    part *= (a + b * k) / (k + 1);
    up.push(part);
  }
  const weights = new Float64Array(mode + up.length);
  weights.set(up, mode);
  for (let k = mode - 1, part = 1; k >= 0 && part > negligible; k--) {
    part *= (k + 1) / (a + b * k);
    weights[k] = part;
  }
  return normalised(weights);
}

export interface CountMoments {
  readonly mean: number;
  readonly variance: number;
}

/** The distribution in which every count of a list is equally likely. @throws RangeError for an empty list */
export function empiricalDistribution(counts: readonly number[]): CountDistribution {
  if (counts.length === 0) throw new RangeError("counts must hold at least one value");
  const weights = new Float64Array(Math.max(...counts) + 1);
  for (const count of counts) weights[count] = (weights[count] ?? 0) + 1;
  return normalised(weights);
}

/** Distributions weighed and added. @throws RangeError where nothing has weight */
export function mixedDistribution(parts: readonly WeighedDistribution[]): CountDistribution {
  let length = 1;
  for (const { distribution } of parts) length = Math.max(length, distribution.length);
  const mixed = new Float64Array(length);
  for (const { weight, distribution } of parts) {
    for (let k = 0; k < distribution.length; k++) mixed[k] = (mixed[k] ?? 0) + weight * (distribution[k] ?? 0);
  }
  return normalised(mixed);
}

export interface WeighedDistribution {
  readonly weight: number;
  readonly distribution: CountDistribution;
}

/** Smallest count that is not exceeded with at least the given probability, in (0, 1). */
export function countQuantile(distribution: CountDistribution, probability: number): number {
  requireProbability("probability", probability);
  let sum = 0;
  for (let k = 0; k < distribution.length; k++) {
    sum += distribution[k] ?? 0;
    if (sum >= probability - 1e-12) return k;
  }
  return distribution.length - 1;
}

/** Chance of a count at or below the given one; 0 for one below zero. */
export function countAtMost(distribution: CountDistribution, count: number): number {
  let sum = 0;
  for (let k = 0; k <= count && k < distribution.length; k++) sum += distribution[k] ?? 0;
  return Math.min(1, sum);
}

export function countMean(distribution: CountDistribution): number {
  return distribution.reduce((sum, chance, k) => sum + k * chance, 0);
}

function normalised(weights: Float64Array): CountDistribution {
  let total = 0;
  for (let k = 0; k < weights.length; k++) total += weights[k] ?? 0;
  requirePositive("sum of the weights", total);
  for (let k = 0; k < weights.length; k++) weights[k] = (weights[k] ?? 0) / total;
  return weights;
}
