import { normalQuantile } from "../normal";
import { requirePositive, requireProbability } from "../require";
import type { OverDispersion } from "./over-dispersion";

/**
 * Control limits of a funnel plot on the ratio scale (observed over expected, target 1) when the groups differ more
 * than chance everywhere. The normal scale is the logarithm of the ratio, on which a count's standard error is
 * 1 / √expected.
 * @param expected    above 0
 * @param confidence  two-sided share of ordinary groups inside, in (0, 1)
 * @param dispersion  from overDispersion, with z-scores made by `ratioScores`
 * @param model       "multiplicative" widens every standard error by √factor (never below 1); "additive" adds the
 *   variance between groups, so that large groups are not flagged for differences that all groups have
 * @throws RangeError for an argument outside its range
 * Source: Spiegelhalter (2005), Quality and Safety in Health Care 14, 347-351.
 * Checked: tests/statistics/funnel.test.ts.
 */
export function dispersedFunnelLimits({ expected, confidence, dispersion, model }: DispersedLimitsInput): FunnelPair {
  requirePositive("expected", expected);
  requireProbability("confidence", confidence);
  const z = -normalQuantile((1 - confidence) / 2);
  const variance =
    model === "multiplicative" ? Math.max(1, dispersion.factor) / expected : 1 / expected + dispersion.betweenVariance;
  const factor = Math.exp(z * Math.sqrt(variance));
  return { low: 1 / factor, high: factor };
}

export interface DispersedLimitsInput {
  readonly expected: number;
  readonly confidence: number;
  readonly dispersion: OverDispersion;
  readonly model: "multiplicative" | "additive";
}

export interface FunnelPair {
  readonly low: number;
  readonly high: number;
}

/**
 * z-scores on the same scale: log(observed / expected) × √expected. A count of 0 has no logarithm and is scored as
 * if half an event had been seen.
 */
export function ratioScores(
  groups: readonly { readonly observed: number; readonly expected: number }[],
): readonly { readonly z: number; readonly standardError: number }[] {
  return groups.map(({ observed, expected }, i) => {
    requirePositive(`groups[${i}].expected`, expected);
    const ratio = Math.max(observed, 0.5) / expected;
    return { z: Math.log(ratio) * Math.sqrt(expected), standardError: 1 / Math.sqrt(expected) };
  });
}
