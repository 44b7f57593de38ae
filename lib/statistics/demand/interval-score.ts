import { requireProbability } from "../require";

/**
 * Winkler's score of one prediction interval: its width, plus a penalty for every unit by which the outcome lies
 * outside, 2 / (1 − level) each. Smaller is better.
 * @param low, high of the interval, low at most high
 * @param level     of the central interval, in (0, 1)
 * @param outcome   what happened
 * @throws RangeError for an argument outside its range
 * Source: Winkler (1972), JASA 67, 187-191; Gneiting & Raftery (2007), JASA 102, 359-378, section 6.2.
 * Checked: tests/statistics/demand.test.ts (case F07), by hand.
 */
export function intervalScore({ low, high, level, outcome }: IntervalScoreInput): number {
  requireProbability("level", level);
  if (!(low <= high)) throw new RangeError(`low must not exceed high (${high}); it is ${low}`);
  const outside = Math.max(0, low - outcome, outcome - high);
  return high - low + (2 / (1 - level)) * outside;
}

export interface IntervalScoreInput {
  readonly low: number;
  readonly high: number;
  readonly level: number;
  readonly outcome: number;
}
