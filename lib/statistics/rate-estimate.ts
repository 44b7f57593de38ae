import type { Estimate } from "./estimate";
import type { Interval } from "./intervals/interval";
import { poissonMidP } from "./intervals/poisson-mid-p";
import { poissonRate } from "./intervals/poisson-rate";
import { robustRate, type UnitSums } from "./intervals/robust-rate";

/**
 * A failure rate per unit-year as an Estimate.
 * @param method "poisson-exact" guarantees its level; "poisson-mid-p" is shorter and right on average
 * @throws RangeError for an argument outside its range
 * Checked: tests/statistics/estimates.test.ts.
 */
export function rateEstimate({ events, unitYears, level, method }: RateEstimateInput): Estimate {
  const interval = method === "poisson-exact" ? poissonRate : poissonMidP;
  const outer = interval({ events, exposure: unitYears, confidence: level });
  const inner = interval({ events, exposure: unitYears, confidence: 0.5 });
  return { ...limits(outer, inner), events, n: unitYears, level, method, basis: UNIT_YEARS };
}

export interface RateEstimateInput {
  readonly events: number;
  readonly unitYears: number;
  readonly level: number;
  readonly method: "poisson-exact" | "poisson-mid-p";
}

/**
 * A rate of failures that can repeat on one unit: the exact interval, or the one from the spread between units
 * where that is wider. `method` in the result says which; the page gives the reason.
 */
export function repeatableRateEstimate({ level, ...sums }: RepeatableRateInput): Estimate {
  const exact = rateEstimate({ events: sums.events, unitYears: sums.exposure, level, method: "poisson-exact" });
  const outer = robustRate({ ...sums, confidence: level });
  const inner = robustRate({ ...sums, confidence: 0.5 });
  if (outer.kind !== "interval" || inner.kind !== "interval") return exact;
  const wider = outer.dispersion > 1 && outer.high - outer.low > exact.hi - exact.lo;
  return wider ? { ...exact, ...limits(outer, inner), method: "poisson-robust" } : exact;
}

/** Sums over units, exposure in unit-years, with the level of the interval. */
export type RepeatableRateInput = Omit<UnitSums, "confidence"> & { readonly level: number };

const UNIT_YEARS = { kind: "rate", exposureUnit: "unit-years" } as const;

/** The five numbers of an Estimate from its outer and its 50 % interval. */
export function limits(
  outer: Interval,
  inner: Interval,
): Pick<Estimate, "point" | "lo" | "hi" | "innerLo" | "innerHi"> {
  return { point: outer.point, lo: outer.low, hi: outer.high, innerLo: inner.low, innerHi: inner.high };
}
