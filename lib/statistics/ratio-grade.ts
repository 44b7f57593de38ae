import type { Estimate } from "./estimate";
import type { EstimateGrade } from "./estimate-grade";

/** A firm comparison: at least so many events seen … */
export const firmRatioEvents = 10;
/** … and a range whose upper end is at most so many times its lower one. */
export const firmRatioSpan = 4;
/** With fewer than this both seen and expected, there is nothing to compare. */
export const thinRatioCount = 5;
/** A range that holds 1 and spans more than this factor says neither more nor less. */
export const thinRatioSpan = 100;

/**
 * How much a comparison can bear: observed over expected, or one rate over another. The denominator of such a ratio
 * is a number of events and no exposure, and its range is a matter of factors: 2 to 8 times is as wide as 0.5 to 2.
 * Firm: at least 10 events seen and hi at most 4 times lo. Exact limits of a count of 10 reach from 4.80 to 18.4, a
 * factor of 3.84, and of 9 a factor of 4.15; so against a large reference the two parts of the rule say the same, and
 * against a small one the width of the range stands for the count of the other side.
 * Thin: fewer than 5 events both seen and expected (none of 3 expected is no news; none of 5 is), or a range that
 * holds 1 and spans more than a factor of 100. Loose: between the two.
 * Source: none published is known; set by this project to agree with the rule for rates at a count of 10.
 * Checked: tests/statistics/estimate-grade.test.ts, at each boundary, and against the exact limits.
 */
export function ratioGrade({ events, n, lo, hi }: Pick<Estimate, "events" | "n" | "lo" | "hi">): EstimateGrade {
  if (events < thinRatioCount && n < thinRatioCount) return "thin";
  if (lo <= 1 && hi >= 1 && hi > thinRatioSpan * lo) return "thin";
  return events >= firmRatioEvents && hi <= firmRatioSpan * lo ? "firm" : "loose";
}
