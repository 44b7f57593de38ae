import { normalQuantile } from "../normal";
import { requirePositive, requireProbability } from "../require";
import { type FittedLife, type LifeInterval, standardLifeOf } from "./fitted-life";
import { profileLimits } from "./profile-limit";
import { standardAge } from "./profiled-quantities";
import type { StandardLife } from "./standard-life";

/**
 * Probability of having failed by an age, with limits.
 * @param age         above 0, in the unit of the fit
 * @param confidence  two-sided level in (0, 1); no default
 * @param interval    likelihood ratio, or delta method on the logit; no default
 * @returns probabilities in [0, 1]
 * @throws RangeError for an argument outside its range
 * Source: Meeker and Escobar (1998), Statistical Methods for Reliability Data, sections 8.3.3 and 8.4.3.
 * Checked: tests/statistics/life/failure-age.test.ts, a brute-force search in R and numerical derivatives.
 */
export function failureProbability(fit: FittedLife, question: FailureProbabilityQuestion): FailureProbability {
  const { age, confidence, interval } = question;
  requirePositive("age", age);
  requireProbability("confidence", confidence);
  const life = standardLifeOf(fit);
  const quantity = standardAge(fit.core, Math.log(age / fit.core.sample.unit));
  const probability = life.failed(quantity.estimate);
  if (interval === "delta") {
    const multiplier = -normalQuantile((1 - confidence) / 2);
    return { probability, ...logitLimits(life, quantity.estimate, multiplier * quantity.standardError) };
  }
  const { low, high } = profileLimits({ likelihood: fit.core.likelihood, peak: fit.core.peak, quantity, confidence });
  // A profile that never drops excludes no probability on its side.
  return {
    probability,
    low: low === "unbounded" ? 0 : life.failed(low),
    high: high === "unbounded" ? 1 : life.failed(high),
  };
}

export interface FailureProbabilityQuestion {
  readonly age: number;
  readonly confidence: number;
  readonly interval: LifeInterval;
}

export interface FailureProbability {
  readonly probability: number;
  readonly low: number;
  readonly high: number;
}

/** Beyond this the hazard exp(z) of a Weibull overflows; the probability is 1 to the last digit long before. */
const FARTHEST_Z = 700;

function logitLimits(life: StandardLife, z: number, arm: number): { low: number; high: number } {
  const place = Math.min(z, FARTHEST_Z);
  const centre = life.logit(place);
  const width = life.logitSlope(place) * arm;
  return { low: fromLogit(centre - width), high: fromLogit(centre + width) };
}

function fromLogit(logit: number): number {
  return logit < 0 ? Math.exp(logit) / (1 + Math.exp(logit)) : 1 / (1 + Math.exp(-logit));
}
