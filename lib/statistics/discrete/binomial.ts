import { incompleteBeta } from "../incomplete-beta";
import { stirlingError } from "../log-gamma";
import { normalQuantile } from "../normal";
import { requireProbability, requireWholeNumber } from "../require";
import { deviance } from "../special/deviance";
import { smallestReaching } from "./smallest-reaching";

/**
 * Smallest count that a binomial variable stays at or below with at least the given probability.
 * @param probability strictly between 0 and 1
 * @param trials      whole number, 0 or more
 * @param chance      of each trial, 0..1
 * @throws RangeError for an argument outside its range
 * Checked: tests/statistics/discrete.test.ts, by definition and against R qbinom.
 */
export function binomialQuantile(probability: number, { trials, chance }: BinomialShape): number {
  requireProbability("probability", probability);
  const spread = Math.sqrt(trials * chance * (1 - chance));
  const slack = 64 * Number.EPSILON;
  const guess = Math.min(trials, Math.max(0, trials * chance + normalQuantile(probability) * spread));
  return smallestReaching({
    guess,
    step: spread + 1,
    reached: (count) =>
      probability <= 0.5
        ? binomialAtMost(count, { trials, chance }) >= probability * (1 - slack)
        : binomialAtLeast(count + 1, { trials, chance }) <= (1 - probability) * (1 + slack),
  });
}

export interface BinomialShape {
  readonly trials: number;
  readonly chance: number;
}

/** P(X <= count). */
export function binomialAtMost(count: number, { trials, chance }: BinomialShape): number {
  requireShape({ trials, chance });
  if (count < 0) return 0;
  if (count >= trials) return 1;
  return incompleteBeta(count + 1, trials - count, chance).upper;
}

/** P(X >= count), computed as itself so that a tiny tail keeps its digits. */
export function binomialAtLeast(count: number, { trials, chance }: BinomialShape): number {
  requireShape({ trials, chance });
  if (count <= 0) return 1;
  if (count > trials) return 0;
  return incompleteBeta(count, trials - count + 1, chance).lower;
}

/** P(X = count), in Loader's form, which keeps its digits for millions of trials. */
export function binomialProbability(count: number, { trials, chance }: BinomialShape): number {
  requireShape({ trials, chance });
  requireWholeNumber("count", count);
  if (count > trials) return 0;
  if (chance === 0 || chance === 1) return count === trials * chance ? 1 : 0;
  if (count === 0) return Math.exp(trials * Math.log1p(-chance));
  if (count === trials) return Math.exp(trials * Math.log(chance));
  const rest = trials - count;
  const exponent =
    stirlingError(trials) -
    stirlingError(count) -
    stirlingError(rest) -
    deviance(count, trials * chance) -
    deviance(rest, trials * (1 - chance));
  return Math.exp(exponent) * Math.sqrt(trials / (2 * Math.PI * count * rest));
}

function requireShape({ trials, chance }: BinomialShape): void {
  requireWholeNumber("trials", trials);
  if (!(chance >= 0 && chance <= 1)) throw new RangeError(`chance must lie in 0..1; it is ${chance}`);
}
