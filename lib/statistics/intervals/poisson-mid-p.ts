import { poissonAtLeast, poissonAtMost, poissonProbability } from "../discrete/poisson";
import { bracketedRoot } from "../special/bracketed-root";
import type { Interval } from "./interval";
import { type CountOverExposure, poissonRate } from "./poisson-rate";

/**
 * Event rate with its mid-P interval: the observed count itself counts half towards each tail. Shorter than the
 * exact interval and right on average, but it may cover a little less than it says at some rates.
 * @returns rate and limits per unit of exposure; low is 0 when events is 0
 * @throws RangeError for an argument outside its range
 * Source: Cohen & Yang (1994), Statistics in Medicine 13, 2189-2203.
 * Checked: tests/statistics/poisson-rates.test.ts, by definition.
 */
export function poissonMidP({ events, exposure, confidence }: CountOverExposure): Interval {
  const exact = poissonRate({ events, exposure: 1, confidence });
  const tail = (1 - confidence) / 2;
  // Both limits lie inside the exact interval; at a very low confidence they may both lie on one side of the point.
  const half = (mean: number) => poissonProbability(events, mean) / 2;
  const low =
    events === 0
      ? 0
      : bracketedRoot((mean) => poissonAtLeast(events + 1, mean) + half(mean) - tail, exact.low, exact.high);
  const high = bracketedRoot((mean) => poissonAtMost(events - 1, mean) + half(mean) - tail, exact.low, exact.high);
  return { point: events / exposure, low: low / exposure, high: high / exposure };
}
