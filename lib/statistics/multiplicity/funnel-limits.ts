import { poissonAtMost, poissonProbability, poissonQuantile } from "../discrete/poisson";
import { requirePositive, requireProbability } from "../require";

/**
 * Control limit of a funnel plot: the count that a group with this many expected events stays at or below with the
 * given probability, when nothing but chance moves it. Divide by `expected` for the ratio scale.
 * @param expected    events that the group's exposure and ages predict, above 0
 * @param probability of the limit, in (0, 1): 0.025 and 0.975 for the 95 % pair, 0.001 and 0.999 for the 99.8 % pair
 * @param between     "whole-counts" gives the plain exact quantile; "interpolated" draws a smooth line through the
 *   exact quantiles, the count of the limit less the excess of its probability
 * @throws RangeError for an argument outside its range
 * Source: Spiegelhalter (2005), Statistics in Medicine 24, 1185-1202, section 3 and appendix A.1.1.
 * Checked: tests/statistics/funnel.test.ts (case H07), against R qpois.
 */
export function poissonFunnelLimit({ expected, probability, between }: FunnelLimitInput): number {
  requirePositive("expected", expected);
  requireProbability("probability", probability);
  const count = poissonQuantile(probability, expected);
  if (between === "whole-counts") return count;
  const excess = poissonAtMost(count, expected) - probability;
  return Math.max(0, count - excess / poissonProbability(count, expected));
}

export interface FunnelLimitInput {
  readonly expected: number;
  readonly probability: number;
  readonly between: "whole-counts" | "interpolated";
}
