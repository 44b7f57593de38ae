import { normalQuantile } from "../normal";
import { requireNonNegative, requirePositive, requireProbability, requireWholeNumber } from "../require";
import type { Interval } from "./interval";

/**
 * Event rate whose limits do not assume that events are independent: units that fail often may fail again.
 * For rates of repeatable events, where each unit has its own count and its own time at risk.
 * The variance of the rate is the sum over units of (count - rate x time) squared, over the total time squared; the
 * limits are symmetric on the log scale, so the lower one stays above 0.
 * @param events           total count, a whole number above 0 (without an event there is no spread to see)
 * @param exposure         total time at risk, above 0
 * @param squaredEvents    sum over units of the unit's count squared; at least events
 * @param eventExposure    sum over units of count x time
 * @param squaredExposure  sum over units of time squared
 * @param confidence       two-sided level in (0, 1)
 * @returns rate and limits per unit of exposure; dispersion, the variance over that of a Poisson count
 * @throws RangeError for an argument outside its range
 * Source: Lawless & Nadeau (1995), Technometrics 37, 158-168, for a constant rate; the ratio estimator's variance.
 * Checked: tests/statistics/robust-rate.test.ts, by definition from single units.
 */
export function robustRate(sums: UnitSums): Interval & { readonly dispersion: number } {
  requireSums(sums);
  const rate = sums.events / sums.exposure;
  const spread = sums.squaredEvents - 2 * rate * sums.eventExposure + rate * rate * sums.squaredExposure;
  const logError = Math.sqrt(Math.max(spread, 0)) / sums.events;
  const arm = Math.exp(normalQuantile((1 + sums.confidence) / 2) * logError);
  return { point: rate, low: rate / arm, high: rate * arm, dispersion: Math.max(spread, 0) / sums.events };
}

export interface UnitSums {
  readonly events: number;
  readonly exposure: number;
  readonly squaredEvents: number;
  readonly eventExposure: number;
  readonly squaredExposure: number;
  readonly confidence: number;
}

function requireSums({ events, exposure, squaredEvents, eventExposure, squaredExposure, confidence }: UnitSums): void {
  requireWholeNumber("events", events);
  requirePositive("events", events);
  requirePositive("exposure", exposure);
  requireWholeNumber("squaredEvents", squaredEvents);
  requireNonNegative("eventExposure", eventExposure);
  requireNonNegative("squaredExposure", squaredExposure);
  requireProbability("confidence", confidence);
  if (squaredEvents < events)
    throw new RangeError(`squaredEvents must be at least events; it is ${squaredEvents} against ${events}`);
}
