import { incompleteBetaAt } from "../incomplete-beta";
import { logGamma } from "../log-gamma";
import { requireNonNegative, requirePositive, requireProbability, requireWholeNumber } from "../require";
import { smallestReaching } from "./smallest-reaching";

/**
 * Counts that are Poisson given a gamma-distributed rate: size is the gamma's shape, and the variance is
 * mean + mean² / size. As size grows they become Poisson.
 * Smallest count that such a variable stays at or below with at least the given probability.
 * @throws RangeError for an argument outside its range
 * Checked: tests/statistics/discrete.test.ts, against R qnbinom.
 */
export function negativeBinomialQuantile(probability: number, shape: NegativeBinomialShape): number {
  requireProbability("probability", probability);
  const spread = Math.sqrt(shape.mean + (shape.mean * shape.mean) / shape.size);
  return smallestReaching({
    guess: shape.mean,
    step: spread + 1,
    reached: (count) =>
      probability <= 0.5
        ? negativeBinomialAtMost(count, shape) >= probability * (1 - 64 * Number.EPSILON)
        : negativeBinomialAtLeast(count + 1, shape) <= (1 - probability) * (1 + 64 * Number.EPSILON),
  });
}

export interface NegativeBinomialShape {
  /** Above 0. */
  readonly size: number;
  /** 0 or more. */
  readonly mean: number;
}

/** P(X <= count). */
export function negativeBinomialAtMost(count: number, shape: NegativeBinomialShape): number {
  return count < 0 ? 0 : tails(count, shape).lower;
}

/** P(X >= count). */
export function negativeBinomialAtLeast(count: number, shape: NegativeBinomialShape): number {
  return count <= 0 ? 1 : tails(count - 1, shape).upper;
}

/** P(X = count). */
export function negativeBinomialProbability(count: number, { size, mean }: NegativeBinomialShape): number {
  requireWholeNumber("count", count);
  requireShape({ size, mean });
  if (mean === 0) return count === 0 ? 1 : 0;
  const log =
    logGamma(size + count) -
    logGamma(size) -
    logGamma(count + 1) -
    size * Math.log1p(mean / size) -
    count * Math.log1p(size / mean);
  return Math.exp(log);
}

function tails(
  count: number,
  { size, mean }: NegativeBinomialShape,
): { readonly lower: number; readonly upper: number } {
  requireShape({ size, mean });
  if (mean === 0) return { lower: 1, upper: 0 };
  const total = size + mean;
  return incompleteBetaAt(size, Math.floor(count) + 1, { x: size / total, y: mean / total });
}

function requireShape({ size, mean }: NegativeBinomialShape): void {
  requirePositive("size", size);
  requireNonNegative("mean", mean);
}
