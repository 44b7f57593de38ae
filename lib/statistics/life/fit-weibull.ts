import { type FitOptions, type FitSummary, fitLocationScale, fitSummary, type RefusedFit } from "./fit-location-scale";
import { type LifeEstimate, logEstimate } from "./life-estimate";
import type { FitSource } from "./life-sample";
import { logAgeAt, logSpread } from "./profiled-quantities";

/**
 * Weibull life by maximum likelihood, from exact, right-, left- and interval-censored failures with late entry.
 * The survival probability is exp(−(age / scale)^shape). Shape below 1: failures come early and thin out;
 * 1: age does not matter; above 1: wear.
 * @param source   rows, columns or flows (exact and right-censored), or inspection rows (bounded failures);
 *                 ages in any one unit
 * @param options  confidence and the fewest failures to accept: no defaults
 * @returns shape (no unit) and scale (in the unit of age), each with profile and Wald limits; or why there is no fit
 * @throws RangeError for an argument outside its range
 * Source: Meeker and Escobar (1998), Statistical Methods for Reliability Data, chapters 7, 8 and 11.
 * Checked: tests/statistics/life/fit-weibull.test.ts, printed examples and R survreg to 1e-6.
 */
export function fitWeibull(source: FitSource, options: FitOptions): WeibullFit | RefusedFit {
  const core = fitLocationScale("weibull", source, options);
  if (core.kind === "refused") return core;
  const { confidence } = options;
  return {
    ...fitSummary(core, confidence),
    family: "weibull",
    shape: logEstimate(core, logSpread(core), { direction: -1, shift: 0, confidence }),
    scale: logEstimate(core, logAgeAt(core, 0), { direction: 1, shift: Math.log(core.sample.unit), confidence }),
  };
}

export interface WeibullFit extends FitSummary {
  readonly family: "weibull";
  readonly shape: LifeEstimate;
  /** Age by which 63.2 % have failed, in the unit of the ages given. */
  readonly scale: LifeEstimate;
}
