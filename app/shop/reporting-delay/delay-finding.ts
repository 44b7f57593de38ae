import { fewestDelayJobs, type ReportingDelays } from "@/lib/failures/reporting-delay";
import { daysUntilShare } from "@/lib/failures/reporting-delay-correction";
import { formatCounted } from "@/lib/format/format-count";

/** The sentence that opens the page. */
export function delayFinding({ openedToClosed }: ReportingDelays): string {
  if (openedToClosed.kind === "too-few-jobs") {
    return `Too few jobs to tell how long they take: ${formatCounted(openedToClosed.jobs, "job")}, and ${fewestDelayJobs} are needed`;
  }
  const { delay } = openedToClosed;
  const days = (share: number) => formatCounted(daysUntilShare(delay, share), "day");
  return `Half of all jobs are closed within ${days(0.5)} of the call, 9 in 10 within ${days(0.9)}`;
}
