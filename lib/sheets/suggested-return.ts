import { type Day, daysBetween } from "@/lib/calendar/day";
import type { EarlierJob } from "@/lib/domain/job";

export interface SuggestedReturn {
  readonly jobNumber: string;
  /** From the earlier completion to this request. */
  readonly days: number;
  readonly same: "component" | "symptom";
}

interface Asked {
  readonly symptom: string;
  /** What failed now, once that is known. */
  readonly component: string | undefined;
  readonly requestedOn: Day;
  /** The company's own rule. */
  readonly repeatDays: number;
  /** Closed jobs on the same unit. */
  readonly earlier: readonly EarlierJob[];
}

/**
 * The job that this one seems to return to: the latest on the unit with the same component or complaint, completed within
 * the repeat days before this was asked for. A suggestion only; whoever was there decides.
 */
export function suggestedReturn({
  symptom,
  component,
  requestedOn,
  repeatDays,
  earlier,
}: Asked): SuggestedReturn | undefined {
  const near = earlier
    .map((job) => ({ job, days: daysBetween(job.completedOn, requestedOn) }))
    .filter(({ days }) => days >= 0 && days <= repeatDays)
    .sort((a, b) => a.days - b.days || (a.job.jobNumber < b.job.jobNumber ? 1 : -1));
  const ofPart = component === undefined ? undefined : near.find(({ job }) => job.component === component);
  const found = ofPart ?? near.find(({ job }) => job.symptom === symptom);
  if (found === undefined) return undefined;
  return { jobNumber: found.job.jobNumber, days: found.days, same: ofPart === undefined ? "symptom" : "component" };
}
