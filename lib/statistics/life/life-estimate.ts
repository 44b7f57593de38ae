import { normalQuantile } from "../normal";
import type { LocationScaleFit } from "./fit-location-scale";
import { type Bound, type ProfiledQuantity, profileLimits } from "./profile-limit";

/** A positive parameter with its intervals. */
export interface LifeEstimate {
  readonly value: number;
  /** Standard error of the natural logarithm of the value. */
  readonly logStandardError: number;
  /** Likelihood-ratio limits: the ones to show, above all with few failures. */
  readonly profile: { readonly low: Bound; readonly high: Bound };
  /** Symmetric in the logarithm; quicker, and misleading with few failures. */
  readonly wald: { readonly low: number; readonly high: number };
}

/** Estimate of exp(direction × theta + shift) with limits carried over from theta. */
export function logEstimate(
  fit: LocationScaleFit,
  quantity: ProfiledQuantity,
  { direction, shift, confidence }: { direction: 1 | -1; shift: number; confidence: number },
): LifeEstimate {
  const outward = (theta: number) => Math.exp(direction * theta + shift);
  const bound = (theta: Bound): Bound => (theta === "unbounded" ? theta : outward(theta));
  const { low, high } = profileLimits({ likelihood: fit.likelihood, peak: fit.peak, quantity, confidence });
  const value = outward(quantity.estimate);
  const arm = Math.exp(-normalQuantile((1 - confidence) / 2) * quantity.standardError);
  return {
    value,
    logStandardError: quantity.standardError,
    profile: direction === 1 ? { low: bound(low), high: bound(high) } : { low: bound(high), high: bound(low) },
    wald: { low: value / arm, high: value * arm },
  };
}
