import { daysPerMonth } from "@/lib/failures/rate-question";
import type { SurvivalCurve } from "@/lib/statistics/survival/kaplan-meier";

/** Share failed by an age in months, with its limits; undefined before the first failure. */
export function shareAt(curve: SurvivalCurve, months: number) {
  if (curve.kind !== "curve") return undefined;
  const step = curve.steps.filter(({ age }) => age <= months * daysPerMonth).at(-1);
  if (step === undefined || step.limits.kind !== "limits") return undefined;
  return { failed: 1 - step.survival, low: 1 - step.limits.high, high: 1 - step.limits.low };
}
