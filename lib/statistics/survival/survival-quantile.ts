import { requireProbability } from "../require";
import type { DrawnCurve } from "./kaplan-meier";

/**
 * Age by which a given fraction has failed (0.5: the median life), read off a Kaplan–Meier curve with its limits.
 * @param curve     a drawn curve; its own confidence and interval scale carry over to the limits
 * @param fraction  failed fraction in (0, 1)
 * @returns ages in the unit of the curve. `not-reached` when the curve stays above 1 − fraction; a limit is
 *          `not-reached` when its arm of the curve does. Where the curve is flat at exactly 1 − fraction, any age on the flat would do:
 *          the middle of the flat is given, as R does.
 * @throws RangeError for a fraction outside (0, 1)
 * Source: Brookmeyer and Crowley (1982), Biometrics 38, 29-41.
 * Checked: tests/statistics/survival/survival-quantile.test.ts, against R quantile.survfit and by hand.
 */
export function survivalQuantile(curve: DrawnCurve, fraction: number): SurvivalQuantile {
  requireProbability("fraction", fraction);
  const left = 1 - fraction;
  const age = firstAgeAtOrBelow(curve, left, (step) => step.survival);
  if (age === "not-reached") return { kind: "not-reached" };
  const arm = (end: "low" | "high") =>
    firstAgeAtOrBelow(curve, left, (step) => (step.limits.kind === "limits" ? step.limits[end] : undefined));
  return { kind: "reached", age, low: arm("low"), high: arm("high") };
}

export type AgeLimit = number | "not-reached";

export type SurvivalQuantile =
  | { readonly kind: "reached"; readonly age: number; readonly low: AgeLimit; readonly high: AgeLimit }
  | { readonly kind: "not-reached" };

/** The product of many fractions that should be exactly one half is so only to rounding. */
const SAME = 1.5e-8;

function firstAgeAtOrBelow(
  curve: DrawnCurve,
  left: number,
  height: (step: DrawnCurve["steps"][number]) => number | undefined,
): AgeLimit {
  const reaches = (step: DrawnCurve["steps"][number], level: number) => {
    const at = height(step);
    return at !== undefined && at <= level;
  };
  const first = curve.steps.find((step) => reaches(step, left + SAME));
  if (first === undefined) return "not-reached";
  if (reaches(first, left - SAME)) return first.age;
  const below = curve.steps.find((step) => reaches(step, left - SAME));
  return (first.age + (below?.age ?? curve.lastAge)) / 2;
}
