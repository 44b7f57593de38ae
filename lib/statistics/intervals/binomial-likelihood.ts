import { chiSquareUpperQuantile } from "../chi-square-quantile";
import { bracketedRoot } from "../special/bracketed-root";
import { deviance } from "../special/deviance";
import { type BinomialTrials, requireTrials } from "./binomial-trials";
import type { Interval } from "./interval";

/**
 * A share with its likelihood interval: every share whose likelihood ratio the data do not reject.
 * @returns limits in 0..1
 * @throws RangeError for an argument outside its range
 * Source: Newcombe (1998), Statistics in Medicine 17, 857-872, method 7.
 * Checked: tests/statistics/shares.test.ts (cases B01, B04).
 */
export function binomialLikelihood({ events, trials, confidence }: BinomialTrials): Interval {
  requireTrials({ events, trials, confidence });
  const allowed = chiSquareUpperQuantile(1 - confidence, 1) / 2;
  const rest = trials - events;
  return {
    point: events / trials,
    low: events === 0 ? 0 : lowestShare({ events, trials, allowed }),
    high: rest === 0 ? 1 : 1 - lowestShare({ events: rest, trials, allowed }),
  };
}

/** The share below events / trials at which the log-likelihood has fallen by `allowed`. */
function lowestShare({ events, trials, allowed }: { events: number; trials: number; allowed: number }): number {
  const rest = trials - events;
  if (rest === 0) return Math.exp(-allowed / trials);
  const share = events / trials;
  const fallen = (p: number) => deviance(events, trials * p) + deviance(rest, trials * (1 - p)) - allowed;
  // At this floor the log-likelihood has fallen by more than `allowed`: log(1 − share) gains at most `events`.
  return bracketedRoot(fallen, share * Math.exp(-allowed / events - 1), share);
}
