import { normalQuantile } from "../normal";
import { requireProbability, requireWholeNumber } from "../require";
import type { EstimatedDelay } from "./reporting-delay";

/** Share reported within some days, with its limits. */
export interface ShareWithin {
  readonly days: number;
  readonly share: number;
  readonly low: number;
  readonly high: number;
}

/**
 * Share of events reported within so many days, of those that are reported within the longest delay ever seen, with
 * limits by the delta method on the logit scale, which keeps them inside 0..1.
 * @param days   whole number, 0 or more; from the longest delay seen on the share is 1 without a range
 * @param level  two-sided, in (0, 1)
 * @throws RangeError for an argument outside its range
 * Checked: tests/statistics/delay-correction.test.ts, by hand; delay-coverage.test.ts, under a known delay.
 */
export function shareWithin(delay: EstimatedDelay, days: number, level: number): ShareWithin {
  requireWholeNumber("days", days);
  requireProbability("level", level);
  const step = delay.steps[days];
  if (step === undefined) return { days, share: 1, low: 1, high: 1 };
  const { within: share, standardError } = step;
  if (share <= 0 || share >= 1) return { days, share, low: share, high: share };
  const reach = normalQuantile((1 + level) / 2) * (standardError / (share * (1 - share)));
  const odds = Math.log(share / (1 - share));
  return { days, share, low: 1 / (1 + Math.exp(reach - odds)), high: 1 / (1 + Math.exp(-reach - odds)) };
}
