import { type FitOptions, type FitSummary, fitLocationScale, fitSummary, type RefusedFit } from "./fit-location-scale";
import { type LifeEstimate, logEstimate } from "./life-estimate";
import type { FitSource } from "./life-sample";
import { logAgeAt, logSpread } from "./profiled-quantities";

/**
 * Lognormal life by maximum likelihood, for the same data as `fitWeibull`: log age is normal. Its hazard rises and
 * then falls; use it as a check on the Weibull, by AIC.
 * @param source   as for `fitWeibull`
 * @param options  confidence and the fewest failures to accept: no defaults
 * @returns median life (unit of age) and spread (standard deviation of natural log age), or why there is no fit
 * @throws RangeError for an argument outside its range
 * Source: Meeker and Escobar (1998), Statistical Methods for Reliability Data, chapters 7, 8 and 11.
 * Checked: tests/statistics/life/fit-lognormal.test.ts, printed examples and R survreg to 1e-6.
 */
export function fitLognormal(source: FitSource, options: FitOptions): LognormalFit | RefusedFit {
  const core = fitLocationScale("lognormal", source, options);
  if (core.kind === "refused") return core;
  const { confidence } = options;
  return {
    ...fitSummary(core, confidence),
    family: "lognormal",
    median: logEstimate(core, logAgeAt(core, 0), { direction: 1, shift: Math.log(core.sample.unit), confidence }),
    spread: logEstimate(core, logSpread(core), { direction: 1, shift: 0, confidence }),
  };
}

export interface LognormalFit extends FitSummary {
  readonly family: "lognormal";
  /** Age by which half have failed, in the unit of the ages given; its logarithm is the mean log age. */
  readonly median: LifeEstimate;
  /** Standard deviation of natural log age (maximum likelihood: divisor n, not n − 1). */
  readonly spread: LifeEstimate;
}
