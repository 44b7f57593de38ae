import { gammaQuantile, gammaUpperQuantile } from "./gamma-quantile";
import { incompleteGamma } from "./incomplete-gamma";

/**
 * The value below which a chi-square distribution holds `probability`.
 * @param probability      strictly between 0 and 1
 * @param degreesOfFreedom above 0, not necessarily whole
 * @throws RangeError for an argument outside its range
 * Source: a chi-square variable is twice a gamma variable of half its degrees of freedom.
 * Checked: tests/statistics/special/quantiles.test.ts, against tests/reference/quantiles.tsv.
 */
export function chiSquareQuantile(probability: number, degreesOfFreedom: number): number {
  return 2 * gammaQuantile(probability, degreesOfFreedom / 2);
}

/** The value above which it holds `probability`. */
export function chiSquareUpperQuantile(probability: number, degreesOfFreedom: number): number {
  return 2 * gammaUpperQuantile(probability, degreesOfFreedom / 2);
}

/** The p-value of a chi-square statistic: the probability of `x` or more. */
export function chiSquareUpperTail(x: number, degreesOfFreedom: number): number {
  return incompleteGamma(degreesOfFreedom / 2, x / 2).upper;
}
