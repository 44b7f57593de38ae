import { normalQuantile } from "../normal";
import { type BinomialTrials, requireTrials, tailOf } from "./binomial-trials";
import type { Interval } from "./interval";

/**
 * A share with the Agresti-Coull interval: the plain normal interval after adding z²/2 events and as many non-events.
 * @returns limits cut to 0..1, which the formula itself can leave
 * @throws RangeError for an argument outside its range
 * Source: Agresti & Coull (1998), The American Statistician 52, 119-126.
 * Checked: tests/statistics/shares.test.ts.
 */
export function agrestiCoull({ events, trials, confidence }: BinomialTrials): Interval {
  requireTrials({ events, trials, confidence });
  const z = -normalQuantile(tailOf(confidence));
  const enlarged = trials + z * z;
  const middle = (events + (z * z) / 2) / enlarged;
  const arm = z * Math.sqrt((middle * (1 - middle)) / enlarged);
  return { point: events / trials, low: Math.max(0, middle - arm), high: Math.min(1, middle + arm) };
}
