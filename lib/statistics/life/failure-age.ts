import { requireProbability } from "../require";
import { type FittedLife, type LifeInterval, standardLifeOf } from "./fitted-life";
import { logEstimate } from "./life-estimate";
import type { Bound } from "./profile-limit";
import { logAgeAt } from "./profiled-quantities";

/**
 * Age by which a given fraction will have failed (0.1: the B10 life), with limits.
 * @param fraction    in (0, 1)
 * @param confidence  two-sided level in (0, 1); no default
 * @param interval    likelihood ratio, or delta method on the log age; no default: with six failures the two can differ twofold
 * @returns ages in the unit of the fit; a limit is `unbounded` when the data exclude no age on that side
 * @throws RangeError for an argument outside its range
 * Source: Meeker and Escobar (1998), Statistical Methods for Reliability Data, sections 8.3.3 and 8.4.2.
 * Checked: tests/statistics/life/failure-age.test.ts, printed examples and a brute-force search in R.
 */
export function failureAge(fit: FittedLife, { fraction, confidence, interval }: FailureAgeQuestion): FailureAge {
  requireProbability("fraction", fraction);
  requireProbability("confidence", confidence);
  const quantity = logAgeAt(fit.core, standardLifeOf(fit).quantile(fraction));
  const estimate = logEstimate(fit.core, quantity, { direction: 1, shift: Math.log(fit.core.sample.unit), confidence });
  return { age: estimate.value, ...(interval === "profile" ? estimate.profile : estimate.wald) };
}

export interface FailureAgeQuestion {
  readonly fraction: number;
  readonly confidence: number;
  readonly interval: LifeInterval;
}

export interface FailureAge {
  readonly age: number;
  readonly low: Bound;
  readonly high: Bound;
}
