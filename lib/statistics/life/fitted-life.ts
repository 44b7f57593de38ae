import type { ExponentialFit } from "./fit-exponential";
import type { LognormalFit } from "./fit-lognormal";
import type { WeibullFit } from "./fit-weibull";
import { STANDARD_LIVES, type StandardLife } from "./standard-life";

/** Any fitted life distribution; `family` tells them apart. */
export type FittedLife = WeibullFit | LognormalFit | ExponentialFit;

/** The distribution of standardised log age; the exponential is a Weibull of shape 1. */
export function standardLifeOf(fit: FittedLife): StandardLife {
  return STANDARD_LIVES[fit.family === "lognormal" ? "lognormal" : "weibull"];
}

/**
 * `profile`: by likelihood ratio, right with few failures. `delta`: symmetric on a scale without bounds
 * (log for ages, logit for probabilities), quicker, and misleading with few failures.
 */
export type LifeInterval = "profile" | "delta";
