import { chiSquareUpperTail } from "../chi-square-quantile";
import { requireFinite, requirePositive } from "../require";

/**
 * Does a richer model fit better than chance would make it? Twice the gain in log-likelihood against chi-square.
 * For example exponential in Weibull (1 degree of freedom: does age matter?), or one life for all groups in one per group
 * (2 for each group beyond the first).
 * @param restricted        log-likelihood of the simpler model, which must be a special case of the other
 * @param full              log-likelihood of the richer model on the same rows
 * @param degreesOfFreedom  parameters gained, above 0
 * @returns statistic (0 or more) and the probability of one as large when the simpler model is true
 * @throws RangeError for an argument outside its range, or a richer model that fits worse: then they are not nested
 * Source: Wilks (1938), Annals of Mathematical Statistics 9, 60-62.
 * Checked: tests/statistics/life/small-parts.test.ts.
 */
export function likelihoodRatioTest({ restricted, full, degreesOfFreedom }: NestedFits): LikelihoodRatio {
  requireFinite("restricted", restricted);
  requireFinite("full", full);
  requirePositive("degreesOfFreedom", degreesOfFreedom);
  const gain = full - restricted;
  if (gain < -1e-8 * Math.abs(full)) {
    throw new RangeError(`full must not be below restricted: ${full} and ${restricted} cannot come from nested models`);
  }
  const statistic = Math.max(0, 2 * gain);
  return { statistic, probability: chiSquareUpperTail(statistic, degreesOfFreedom) };
}

export interface NestedFits {
  readonly restricted: number;
  readonly full: number;
  readonly degreesOfFreedom: number;
}

export interface LikelihoodRatio {
  readonly statistic: number;
  readonly probability: number;
}
