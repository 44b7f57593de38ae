import type { Estimate } from "@/lib/statistics/estimate";
import { poissonRate } from "@/lib/statistics/intervals/poisson-rate";
import { robustRate } from "@/lib/statistics/intervals/robust-rate";
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

const innerLevel = 0.5;

/**
 * Failures per unit-year. Exact Poisson limits; where the same units fail again and again the robust by-unit limits
 * are computed too, and the wider pair is shown, whole.
 * @param exposure  with unitDays above 0
 * @param level     two-sided level of the limits, in (0, 1)
 */
export function rateWithLimits(
  tally: Tally,
  exposure: Exposure,
  level: number,
): { estimate: Estimate; dispersion: number } {
  const unitYears = exposure.unitDays / daysPerYear;
  const exact = (confidence: number) => poissonRate({ events: tally.events, exposure: unitYears, confidence });
  const robust = (confidence: number) =>
    robustRate({
      events: tally.events,
      exposure: unitYears,
      squaredEvents: tally.repeats + tally.events,
      eventExposure: tally.eventUnitDays / daysPerYear,
      squaredExposure: exposure.squaredUnitDays / daysPerYear ** 2,
      confidence,
    });
  const bunched = tally.repeats > 0 ? robust(level) : undefined;
  const plain = exact(level);
  const wider = bunched !== undefined && bunched.dispersion > 1 && bunched.high - bunched.low > plain.high - plain.low;
  const chosen = wider ? bunched : plain;
  const inner = wider ? robust(innerLevel) : exact(innerLevel);
  return {
    dispersion: bunched?.dispersion ?? 1,
    estimate: {
      events: tally.events,
      n: unitYears,
      point: plain.point,
      lo: chosen.low,
      hi: chosen.high,
      innerLo: inner.low,
      innerHi: inner.high,
      level,
      method: wider ? "poisson-robust" : "poisson-exact",
      basis: { kind: "rate", exposureUnit: "unit-years" },
    },
  };
}
