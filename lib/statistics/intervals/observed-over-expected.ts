import type { Interval } from "./interval";
import { poissonRate } from "./poisson-rate";

/**
 * Observed events over the number that a reference predicts (indirect standardisation), with the exact interval of
 * the observed count. The expected number is taken as known: it should come from far more data than the group has.
 * @param observed   whole number, 0 or more
 * @param expected   above 0
 * @param confidence two-sided level in (0, 1)
 * @throws RangeError for an argument outside its range
 * Source: Breslow & Day (1987), Statistical Methods in Cancer Research, volume II, section 2.3.
 * Checked: tests/statistics/poisson-rates.test.ts (case P08).
 */
export function observedOverExpected({ observed, expected, confidence }: ObservedExpected): Interval {
  return poissonRate({ events: observed, exposure: expected, confidence });
}

export interface ObservedExpected {
  readonly observed: number;
  readonly expected: number;
  readonly confidence: number;
}
