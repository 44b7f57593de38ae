import { causes } from "@/lib/domain/cause";
import { componentOf } from "@/lib/domain/components";
import type { JobRecord } from "@/lib/domain/job";
import { formatDay } from "@/lib/format/format-day";

/** Number, what was found, and when it was completed, in one line. */
export function jobFinding({ job }: JobRecord): string {
  const component = job.component === undefined ? "no component" : (componentOf(job.component)?.name ?? job.component);
  const day = formatDay(job.completedOn);
  if (job.status !== "closed") return `Job ${job.jobNumber}, ${job.status}: counted nowhere`;
  if (job.cause === "component") return `Job ${job.jobNumber}: ${component.toLowerCase()} failed, completed ${day}`;
  return `Job ${job.jobNumber}: ${causes[job.cause].name.toLowerCase()}, not a failure of a part, completed ${day}`;
}
