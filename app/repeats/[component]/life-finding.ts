import type { LifeDetail } from "@/lib/failures/life-detail";
import { daysPerYear } from "@/lib/failures/rate-question";
import { formatCounted } from "@/lib/format/format-count";
import { describeShare } from "@/lib/format/format-share";

/** The share failed at the last whole year that the curve reaches, with its range. */
export function lifeFinding(name: string, { curve, failures, spells }: LifeDetail): string {
  if (curve.kind === "no-exposure") return `${name}: no unit was watched for any time`;
  if (curve.kind === "no-events") return `${name}: none of ${formatCounted(spells, "life", "lives")} ended in failure`;
  const years = Math.min(5, Math.floor(curve.lastAge / daysPerYear));
  const step = curve.steps.filter(({ age }) => age <= years * daysPerYear).at(-1);
  if (step === undefined || years < 1 || step.limits.kind !== "limits")
    return `${name}: ${formatCounted(failures, "failure")} in ${formatCounted(spells, "life", "lives")}`;
  const share = describeShare(1 - step.survival, 1 - step.limits.high, 1 - step.limits.low);
  return `${name}: ${share} failed within ${formatCounted(years, "year")}, ${formatCounted(failures, "failure")} seen in all`;
}
