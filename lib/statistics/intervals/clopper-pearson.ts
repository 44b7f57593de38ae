import { betaQuantile, betaUpperQuantile } from "../beta-quantile";
import { type BinomialTrials, requireTrials, tailOf } from "./binomial-trials";
import type { Interval } from "./interval";

/**
 * A share with its exact interval: never covers less than it says, at the price of width.
 * @returns limits in 0..1; at no events the high limit still leaves half of the doubt above it
 * @throws RangeError for an argument outside its range
 * Source: Clopper & Pearson (1934), Biometrika 26, 404-413.
 * Checked: tests/statistics/shares.test.ts (cases B01, B02, B04).
 */
export function clopperPearson({ events, trials, confidence }: BinomialTrials): Interval {
  requireTrials({ events, trials, confidence });
  const tail = tailOf(confidence);
  return {
    point: events / trials,
    low: events === 0 ? 0 : betaQuantile(tail, events, trials - events + 1),
    high: events === trials ? 1 : betaUpperQuantile(tail, events + 1, trials - events),
  };
}
