import { betaQuantile, betaUpperQuantile } from "../beta-quantile";
import { type BinomialTrials, requireTrials, tailOf } from "./binomial-trials";
import type { Interval } from "./interval";

/**
 * A share with its Jeffreys interval: the equal-tailed posterior interval under Beta(½, ½).
 * @returns limits in 0..1; by the usual convention low is 0 at no events and high is 1 when all are events
 * @throws RangeError for an argument outside its range
 * Source: Brown, Cai & DasGupta (2001), Statistical Science 16, 101-133.
 * Checked: tests/statistics/shares.test.ts (cases B01, B02, B04).
 */
export function jeffreys({ events, trials, confidence }: BinomialTrials): Interval {
  requireTrials({ events, trials, confidence });
  const tail = tailOf(confidence);
  const a = events + 0.5;
  const b = trials - events + 0.5;
  return {
    point: events / trials,
    low: events === 0 ? 0 : betaQuantile(tail, a, b),
    high: events === trials ? 1 : betaUpperQuantile(tail, a, b),
  };
}
