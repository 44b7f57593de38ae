import { incompleteGamma, poissonWeight } from "../incomplete-gamma";
import { normalQuantile } from "../normal";
import { requireNonNegative, requireProbability, requireWholeNumber } from "../require";
import { smallestReaching } from "./smallest-reaching";

/**
 * Smallest count that a Poisson variable stays at or below with at least the given probability.
 * @param probability strictly between 0 and 1
 * @param mean        0 or more
 * @throws RangeError for an argument outside its range
 * Checked: tests/statistics/discrete.test.ts, by definition and against R qpois.
 */
export function poissonQuantile(probability: number, mean: number): number {
  requireProbability("probability", probability);
  requireNonNegative("mean", mean);
  const guess = mean + normalQuantile(probability) * Math.sqrt(mean);
  return smallestReaching({ guess, step: Math.sqrt(mean) + 1, reached: reachedBy(probability, mean) });
}

/** P(X <= count); any real count, below 0 it is 0. */
export function poissonAtMost(count: number, mean: number): number {
  requireNonNegative("mean", mean);
  if (count < 0) return 0;
  return mean === 0 ? 1 : incompleteGamma(Math.floor(count) + 1, mean).upper;
}

/** P(X >= count), computed as itself so that a tiny tail keeps its digits. */
export function poissonAtLeast(count: number, mean: number): number {
  requireNonNegative("mean", mean);
  if (count <= 0) return 1;
  return mean === 0 ? 0 : incompleteGamma(Math.ceil(count), mean).lower;
}

/** P(X = count). */
export function poissonProbability(count: number, mean: number): number {
  requireWholeNumber("count", count);
  requireNonNegative("mean", mean);
  return count === 0 ? Math.exp(-mean) : poissonWeight(count, mean);
}

function reachedBy(probability: number, mean: number): (count: number) => boolean {
  // The comparison is made on the smaller tail; a hair of slack keeps exact ties on the right side.
  const slack = 64 * Number.EPSILON;
  if (probability <= 0.5) return (count) => poissonAtMost(count, mean) >= probability * (1 - slack);
  return (count) => poissonAtLeast(count + 1, mean) <= (1 - probability) * (1 + slack);
}
