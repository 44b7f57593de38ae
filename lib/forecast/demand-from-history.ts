// How many of a part will be needed, from how many were: counts in, a predictive distribution out.
import { negativeBinomialQuantile } from "@/lib/statistics/discrete/negative-binomial";
import { poissonQuantile } from "@/lib/statistics/discrete/poisson";
import { requireWholeNumber } from "@/lib/statistics/require";

/** Least months of use from which a range is given; below it counts alone are shown. */
export const fewestMonths = 12;
/** Older use than this says little about next month. */
const longestMemory = 24;
const bandLevels = [0.3, 0.6, 0.9] as const;

export interface DemandBand {
  readonly level: (typeof bandLevels)[number];
  readonly low: number;
  readonly high: number;
}

export type DemandForecast =
  | {
      readonly kind: "forecast";
      /** Whole parts, narrowest band first. */
      readonly bands: readonly DemandBand[];
      readonly monthsUsed: number;
      /** How the 90 % ranges, each made from the months before it, would have done. */
      readonly held: { readonly inside: number; readonly tried: number };
    }
  | { readonly kind: "too-short"; readonly months: number };

/**
 * Demand over the next months from the months before, for a part whose use has no clear trend.
 * The spread is the larger of Poisson's and the months' own; the mean's own uncertainty is added. The distribution
 * with that mean and spread is negative binomial.
 * @param monthly  quantity used in each calendar month, oldest first, months without use included as 0
 * @param ahead    months to look ahead, 1 or more
 * @throws RangeError for a quantity that is no whole number
 * Source: moments of a Poisson count with uncertain mean; Johnson, Kemp & Kotz (2005), Univariate Discrete
 * Distributions, section 5.2.
 * Checked: tests/forecast/demand-from-history.test.ts, by simulation of months with known mean.
 */
export function demandFromHistory(monthly: readonly number[], ahead: number): DemandForecast {
  monthly.forEach((quantity, index) => {
    requireWholeNumber(`monthly[${index}]`, quantity);
  });
  if (!Number.isSafeInteger(ahead) || ahead < 1) throw new RangeError(`ahead must be 1 or more months; it is ${ahead}`);
  if (monthly.length < fewestMonths) return { kind: "too-short", months: monthly.length };
  const recent = monthly.slice(-longestMemory);
  return {
    kind: "forecast",
    bands: bandLevels.map((level) => band(recent, ahead, level)),
    monthsUsed: recent.length,
    held: rangesHeld(monthly),
  };
}

function band(recent: readonly number[], ahead: number, level: DemandBand["level"]): DemandBand {
  const tail = (1 - level) / 2;
  const quantile = predictiveQuantile(recent, ahead);
  return { level, low: quantile(tail), high: quantile(1 - tail) };
}

function predictiveQuantile(recent: readonly number[], ahead: number): (probability: number) => number {
  const months = recent.length;
  const total = recent.reduce((sum, quantity) => sum + quantity, 0);
  // Half a part more than was seen: a part unused for two years may still be needed tomorrow.
  const perMonth = (total + 0.5) / months;
  const spread = recent.reduce((sum, quantity) => sum + (quantity - total / months) ** 2, 0) / (months - 1);
  const dispersion = Math.max(1, spread / perMonth);
  const mean = perMonth * ahead;
  const variance = dispersion * mean * (1 + ahead / months);
  if (variance <= mean * (1 + 1e-9)) return (probability) => poissonQuantile(probability, mean);
  const size = (mean * mean) / (variance - mean);
  return (probability) => negativeBinomialQuantile(probability, { size, mean });
}

/** Rolling origin: each of the last months is predicted from those before it, never from itself. */
function rangesHeld(monthly: readonly number[]): { inside: number; tried: number } {
  const first = Math.max(fewestMonths, monthly.length - longestMemory);
  const tried = monthly.slice(first).map((actual, offset) => {
    const before = monthly.slice(0, first + offset).slice(-longestMemory);
    const { low, high } = band(before, 1, 0.9);
    return actual >= low && actual <= high;
  });
  return { inside: tried.filter(Boolean).length, tried: tried.length };
}
