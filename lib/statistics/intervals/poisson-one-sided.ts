import { gammaQuantile, gammaUpperQuantile } from "../gamma-quantile";
import { type CountOverExposure, requireCount } from "./poisson-rate";

/**
 * Exact limit of an event rate on one side only: all the doubt is spent on that side, so at 0 events and 95 % the
 * upper limit is 2.996, not 3.689. Say on the page that the limit is one-sided.
 * @param side which limit
 * @returns events per unit of exposure; the lower limit is 0 when events is 0
 * @throws RangeError for an argument outside its range
 * Source: Garwood (1936), Biometrika 28, 437-442. The upper limit is also the quantile of the posterior
 *   Gamma(events + 1, exposure) that a flat prior gives.
 * Checked: tests/statistics/poisson-rates.test.ts.
 */
export function poissonOneSided({ events, exposure, confidence, side }: OneSidedCount): number {
  requireCount({ events, exposure, confidence });
  if (side === "upper") return gammaUpperQuantile(1 - confidence, events + 1) / exposure;
  return events === 0 ? 0 : gammaQuantile(1 - confidence, events) / exposure;
}

export interface OneSidedCount extends CountOverExposure {
  readonly side: "lower" | "upper";
}

/** Mean of the posterior Gamma(events + 1, exposure) under a flat prior for the rate. */
export function flatPriorMeanRate({ events, exposure }: Omit<CountOverExposure, "confidence">): number {
  requireCount({ events, exposure, confidence: 0.5 });
  return (events + 1) / exposure;
}
