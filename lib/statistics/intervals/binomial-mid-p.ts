import { binomialAtLeast, binomialAtMost, binomialProbability } from "../discrete/binomial";
import { bracketedRoot } from "../special/bracketed-root";
import { type BinomialTrials, tailOf } from "./binomial-trials";
import { clopperPearson } from "./clopper-pearson";
import type { Interval } from "./interval";

/**
 * A share with its mid-P interval: the observed count itself counts half towards each tail.
 * @returns limits in 0..1
 * @throws RangeError for an argument outside its range
 * Source: Newcombe (1998), Statistics in Medicine 17, 857-872, method 6.
 * Checked: tests/statistics/shares.test.ts (cases B01, B02, B04).
 */
export function binomialMidP({ events, trials, confidence }: BinomialTrials): Interval {
  const exact = clopperPearson({ events, trials, confidence });
  const tail = tailOf(confidence);
  // Both limits lie inside the exact interval; at a very low confidence they may both lie on one side of the point.
  const above = (chance: number) =>
    binomialAtLeast(events + 1, { trials, chance }) + binomialProbability(events, { trials, chance }) / 2 - tail;
  const below = (chance: number) =>
    binomialAtMost(events - 1, { trials, chance }) + binomialProbability(events, { trials, chance }) / 2 - tail;
  return {
    point: exact.point,
    low: events === 0 ? 0 : bracketedRoot(above, exact.low, exact.high),
    high: events === trials ? 1 : bracketedRoot(below, exact.low, exact.high),
  };
}
