import { decideRepeat, type RepeatDecision } from "@/lib/coverage/decide-repeat";
import type { JobRecord } from "@/lib/domain/job";
import type { Policy } from "@/lib/domain/policy";

export interface RepeatFound {
  readonly earlierJob: string;
  readonly decision: RepeatDecision;
}

/** The earlier job that stands most in the way under the payer's repeat rule; undefined without a rule or such a job. */
export function repeatCheck({ job, earlier }: JobRecord, policy: Policy): RepeatFound | undefined {
  const rule = policy.repeat;
  if (rule === undefined) return undefined;
  const reportedOn = job.requestedOn ?? job.firstVisitOn ?? job.completedOn;
  const now = { component: job.component, symptom: job.symptom };
  const found = earlier
    .filter((entry) => entry.completedOn <= reportedOn)
    .map(({ jobNumber, completedOn, component, symptom }): RepeatFound => {
      const previous = { component, symptom };
      const decision = decideRepeat({ rule, previousCompletedOn: completedOn, reportedOn, previous, now });
      return { earlierJob: jobNumber, decision };
    });
  return order.map((kind) => found.find(({ decision }) => decision.kind === kind)).find((entry) => entry !== undefined);
}

const order: readonly RepeatDecision["kind"][] = ["repeat_within_window", "cannot_compare", "unrelated"];
