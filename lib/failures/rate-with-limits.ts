import type { Estimate } from "@/lib/statistics/estimate";
import { robustRate, type UnitSums } from "@/lib/statistics/intervals/robust-rate";
import { repeatableRateEstimate } from "@/lib/statistics/rate-estimate";
import type { Exposure } from "./exposure";
import { daysPerYear } from "./rate-question";

/** What the failures of one group add up to; the last two say how failures bunch by unit. */
export interface Tally {
  readonly events: number;
  /** Sum over failures of the days at risk of the unit that failed. */
  readonly eventUnitDays: number;
  /** Sum over units of failures squared less failures: 0 where no unit failed twice. */
  readonly repeats: number;
}

/**
 * Failures per unit-year with exact Poisson limits; where the same units fail again and again and the by-unit limits
 * are wider, those are shown instead.
 * @param exposure  with unitDays above 0
 * @param level     two-sided level of the limits, in (0, 1)
 * @returns dispersion: variance of the by-unit counts over that of Poisson counts; 1 where it can't be told
 */
export function rateWithLimits(
  tally: Tally,
  exposure: Exposure,
  level: number,
): { estimate: Estimate; dispersion: number } {
  const sums = unitSums(tally, exposure);
  const spread = robustRate({ ...sums, confidence: level });
  return {
    estimate: repeatableRateEstimate({ ...sums, level }),
    dispersion: spread.kind === "interval" ? spread.dispersion : 1,
  };
}

function unitSums(tally: Tally, exposure: Exposure): Omit<UnitSums, "confidence"> {
  return {
    units: exposure.units,
    events: tally.events,
    exposure: exposure.unitDays / daysPerYear,
    eventsSquared: tally.repeats + tally.events,
    eventsExposure: tally.eventUnitDays / daysPerYear,
    exposureSquared: exposure.squaredUnitDays / daysPerYear ** 2,
  };
}
