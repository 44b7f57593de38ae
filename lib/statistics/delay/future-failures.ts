import { binomialAtLeast, binomialAtMost, binomialQuantile } from "../discrete/binomial";
import { requireNonNegative, requireProbability, requireWholeNumber } from "../require";

/**
 * Failures to expect from units that are still running, each failing with the same chance, and the limits within
 * which their number will fall if that chance is right. The chance was itself estimated, and that doubt is not in
 * these limits: they are too narrow where few failures were seen.
 * @param units      running now, whole number
 * @param chance     that one of them fails within the horizon, 0..1; see conditionalChance
 * @param confidence of each one-sided limit, in (0, 1)
 * @throws RangeError for an argument outside its range
 * Source: Escobar & Meeker (1999), Technometrics 41, 113-124 (there called naive).
 * Checked: tests/statistics/prediction.test.ts (case C03).
 */
export function futureFailures({ units, chance, confidence }: FutureFailuresInput): FutureFailures {
  requireWholeNumber("units", units);
  requireProbability("confidence", confidence);
  if (!(chance >= 0 && chance <= 1)) throw new RangeError(`chance must lie in 0..1; it is ${chance}`);
  const shape = { trials: units, chance };
  const high = binomialQuantile(confidence, shape);
  const low = binomialQuantile(1 - confidence, shape);
  // The lower limit is the largest count that is reached or passed with the wanted confidence.
  const exact = binomialAtLeast(low, shape) >= confidence ? low : Math.max(0, low - 1);
  return { expected: units * chance, low: exact, high, insideAtMostHigh: binomialAtMost(high, shape) };
}

export interface FutureFailuresInput {
  readonly units: number;
  readonly chance: number;
  readonly confidence: number;
}

export interface FutureFailures {
  readonly expected: number;
  readonly low: number;
  readonly high: number;
  readonly insideAtMostHigh: number;
}

/**
 * Chance of failing between two ages, given survival to the first, from the cumulative hazard at each. Small
 * chances keep their digits, which the quotient of two probabilities near 1 does not.
 */
export function conditionalChance({
  hazardFrom,
  hazardTo,
}: {
  readonly hazardFrom: number;
  readonly hazardTo: number;
}): number {
  requireNonNegative("hazardFrom", hazardFrom);
  requireNonNegative("hazardTo", hazardTo);
  if (hazardTo < hazardFrom)
    throw new RangeError(`hazardTo must not be below hazardFrom (${hazardFrom}); it is ${hazardTo}`);
  return -Math.expm1(hazardFrom - hazardTo);
}
