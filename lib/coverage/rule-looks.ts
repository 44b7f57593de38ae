import { payItems } from "@/lib/domain/pay-item";
import type { Gate } from "./cover-gates";
import type { DataProblem, ItemDecision, RuleLook } from "./coverage-decision";
import type { DatedLines } from "./dated-lines";
import { windowOf } from "./decide-item";
import type { ItemDecisions } from "./decide-policy";
import type { StatutoryNotice } from "./statutory-notice";

interface LookedAt {
  readonly policy: string;
  readonly found: DatedLines;
  readonly gates: readonly Gate[];
  readonly items: ItemDecisions;
}

/** Every rule of one policy in the order in which it was asked, with what it gave. */
export function ruleLooks({ policy, found, gates, items }: LookedAt): readonly RuleLook[] {
  const looks: RuleLook[] = [];
  const nothing = { policy, item: undefined, window: undefined, deadline: undefined };
  const { start, registration } = found;
  if (start.kind === "found") looks.push({ ...nothing, step: "start", outcome: "passed", gave: start.start.event });
  else looks.push({ ...nothing, step: "start", outcome: "open", gave: start.reason });
  if (registration.kind === "asked") {
    const gave = registration.isInTime ? "registered_in_time" : "not_registered_in_time";
    looks.push({ ...nothing, step: "registration", outcome: "passed", gave, deadline: registration.deadline });
  }
  for (const item of payItems) {
    const decision = items[item];
    looks.push({
      ...nothing,
      step: "term",
      item,
      outcome: lookOutcomes[decision.verdict],
      gave: gaveOf(decision),
      window: windowOf(decision),
    });
  }
  for (const { step, deadline, ...gate } of gates) {
    looks.push({
      ...nothing,
      step,
      outcome: gate.kind,
      gave: gate.kind === "passed" ? "passed" : gate.reason,
      deadline,
    });
  }
  return looks;
}

export const lookOutcomes = {
  covered: "passed",
  not_covered: "stopped",
  needs_evidence: "open",
  needs_local_law: "open",
  invalid_data: "stopped",
} as const satisfies Record<ItemDecision["verdict"], RuleLook["outcome"]>;

export function gaveOf(decision: ItemDecision): string {
  switch (decision.verdict) {
    case "covered":
      return "covered";
    case "invalid_data":
      return decision.problem;
    default:
      return decision.reason;
  }
}

export function dataLook(problem: DataProblem | undefined): RuleLook {
  const outcome = problem === undefined ? "passed" : "stopped";
  return { ...anyPolicy, step: "data_sane", outcome, gave: problem ?? "passed" };
}

/** What was decided between the payers, and what stays true beside it. */
export function closingLooks(items: ItemDecisions, statutory: StatutoryNotice): readonly RuleLook[] {
  const looks: RuleLook[] = [];
  for (const item of payItems) {
    const decision = items[item];
    const window = windowOf(decision);
    const policy = "by" in decision ? decision.by?.policy : undefined;
    looks.push({
      ...anyPolicy,
      policy,
      step: "payer_order",
      item,
      outcome: closings[decision.verdict],
      gave: gaveOf(decision),
      window,
    });
    if (decision.verdict === "needs_evidence" && decision.reason === "ends_differ") {
      looks.push({ ...anyPolicy, policy, step: "ends_agree", item, outcome: "open", gave: "ends_differ", window });
    }
    if ("boundary" in decision && decision.boundary.kind !== "none") {
      looks.push({
        ...anyPolicy,
        policy,
        step: "boundary",
        item,
        outcome: "passed",
        gave: decision.boundary.kind,
        window,
      });
    }
  }
  looks.push({ ...anyPolicy, step: "statute", outcome: "passed", gave: statutory.kind });
  return looks;
}

const anyPolicy = { policy: undefined, item: undefined, window: undefined, deadline: undefined };

const closings = { ...lookOutcomes, covered: "chosen" } as const satisfies Record<
  ItemDecision["verdict"],
  RuleLook["outcome"]
>;
