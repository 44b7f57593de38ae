import { gammaQuantile, gammaUpperQuantile } from "../gamma-quantile";
import { requirePositive, requireProbability, requireWholeNumber } from "../require";
import type { Interval } from "./interval";

/**
 * Event rate with its exact (Garwood) confidence interval.
 * For counts over a known exposure; never too narrow, somewhat wide at small counts.
 * @param events      whole number, 0 or more
 * @param exposure    above 0, in any time unit; every result is per that unit
 * @param confidence  two-sided level in (0, 1); no default, the caller must choose
 * @returns rate and limits in events per unit of exposure; low is 0 when events is 0, and the high limit then
 *   still leaves half of the doubt above it (3.689 at 95 %, not the one-sided 2.996)
 * @throws RangeError for an argument outside its range
 * Source: Garwood (1936), Biometrika 28, 437-442.
 * Checked: tests/statistics/poisson-rates.test.ts, by definition and against printed tables.
 */
export function poissonRate({ events, exposure, confidence }: CountOverExposure): Interval {
  requireCount({ events, exposure, confidence });
  const tail = (1 - confidence) / 2;
  return {
    point: events / exposure,
    low: events === 0 ? 0 : gammaQuantile(tail, events) / exposure,
    high: gammaUpperQuantile(tail, events + 1) / exposure,
  };
}

export interface CountOverExposure {
  readonly events: number;
  readonly exposure: number;
  readonly confidence: number;
}

export function requireCount({ events, exposure, confidence }: CountOverExposure): void {
  requireWholeNumber("events", events);
  requirePositive("exposure", exposure);
  requireProbability("confidence", confidence);
}
