import { chiSquareQuantile, chiSquareUpperQuantile } from "../chi-square-quantile";
import {
  acceptedSample,
  type FitOptions,
  type FitSummary,
  fitSummary,
  type LocationScaleFit,
  type RefusedFit,
  startingLocation,
} from "./fit-location-scale";
import { type LifeEstimate, logEstimate } from "./life-estimate";
import type { FitSource, LifeSample } from "./life-sample";
import { maximiseAlong } from "./maximise-along";
import type { Likelihood } from "./maximise-likelihood";
import { logAgeAt } from "./profiled-quantities";
import { weibullLikelihood } from "./weibull-likelihood";

/**
 * Exponential life by maximum likelihood, for the same data as `fitWeibull`: the hazard is the same at every age.
 * The simplest check: if it fits as well as the Weibull, age does not matter.
 * @param source   as for `fitWeibull`
 * @param options  confidence and the fewest failures to accept: no defaults
 * @returns mean life (unit of age) with likelihood, Wald and exact limits, or why there is no fit
 * @throws RangeError for an argument outside its range
 * Source: Meeker and Escobar (1998), chapter 7; exact limits Epstein and Sobel (1953), JASA 48, 486-502.
 * Checked: tests/statistics/life/fit-exponential.test.ts, printed examples and R survreg to 1e-6.
 */
export function fitExponential(source: FitSource, options: FitOptions): ExponentialFit | RefusedFit {
  const accepted = acceptedSample(source, options);
  if (accepted.kind === "refused") return accepted;
  const { sample } = accepted;
  const { lives, events } = sample;
  // Nobody is known to have been sound at any age: the sooner all fail, the better, without end.
  if (!(sample.lastWatched > 0)) return { kind: "refused", reason: "flat-likelihood", lives, events };
  const core = exponentialCore(sample);
  const { confidence } = options;
  const mean = logEstimate(core, logAgeAt(core, 0), { direction: 1, shift: Math.log(sample.unit), confidence });
  return {
    ...fitSummary(core, confidence),
    family: "exponential",
    mean,
    exact: exactLimits(sample, mean.value, confidence),
  };
}

export interface ExponentialFit extends FitSummary {
  readonly family: "exponential";
  /** Mean life: time lived in all per failure, in the unit of the ages given. */
  readonly mean: LifeEstimate;
  readonly exact: ExactMeanLimits;
}

/**
 * Chi-square limits of the mean life, which exist only when every failure age is known. The low limit depends on why
 * watching stopped: at a set time (2r + 2 degrees of freedom, cautious for other schemes), or at the last failure (2r).
 */
export type ExactMeanLimits =
  | {
      readonly kind: "limits";
      readonly lowStoppedByTime: number;
      readonly lowStoppedByFailure: number;
      readonly high: number;
    }
  | { readonly kind: "failures-bounded" };

function exactLimits(sample: LifeSample, mean: number, confidence: number): ExactMeanLimits {
  if (sample.bounded.length > 0) return { kind: "failures-bounded" };
  const tail = (1 - confidence) / 2;
  const lived = mean * sample.events;
  const lowWith = (degreesOfFreedom: number) => (2 * lived) / chiSquareUpperQuantile(tail, degreesOfFreedom);
  return {
    kind: "limits",
    lowStoppedByTime: lowWith(2 * sample.events + 2),
    lowStoppedByFailure: lowWith(2 * sample.events),
    high: (2 * lived) / chiSquareQuantile(tail, 2 * sample.events),
  };
}

function exponentialCore(sample: LifeSample): LocationScaleFit {
  const likelihood: Likelihood = (m, s) => weibullLikelihood(sample, m, s);
  const top = maximiseAlong(likelihood, (m) => ({ m, s: 0, dm: 1, ds: 0, ddm: 0 }), startingLocation(sample), 1e-22);
  return {
    kind: "fitted",
    sample,
    likelihood,
    peak: { m: top.at, s: 0, slopes: top.slopes },
    covariance: { mm: -1 / top.slopes.mm, ms: 0, ss: 0 },
    spreadFixed: true,
  };
}
