import { type PayItem, payItems } from "@/lib/domain/pay-item";
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
  const { start, registration } = found;
  const isFound = start.kind === "found";
  const looks = [look("start", isFound ? "passed" : "open", isFound ? start.start.event : start.reason, policy)];
  if (registration.kind === "asked") {
    const outcome = registration.standing === "unsure" ? "open" : "passed";
    const gave = registrationWords[registration.standing];
    looks.push({ ...look("registration", outcome, gave, policy), deadline: registration.deadline });
  }
  for (const item of payItems)
    looks.push(itemLook("term", lookOutcomes[items[item].verdict], items[item], item, policy));
  for (const gate of gates) {
    const gave = gate.kind === "passed" ? (gate.because ?? "passed") : gate.reason;
    const asked = look(gate.step, gate.kind, gave, policy);
    looks.push(gate.deadline === undefined ? asked : { ...asked, deadline: gate.deadline });
  }
  return looks;
}

const registrationWords = {
  in_time: "registered_in_time",
  late: "not_registered_in_time",
  none: "no_registration_on_file",
  unsure: "registration_unsure",
  not_asked: "full_warranty",
} as const;

export function dataLook(problem: DataProblem | undefined): RuleLook {
  return look("data_sane", problem === undefined ? "passed" : "stopped", problem ?? "passed", undefined);
}

/** What was decided between the payers, and what stays true beside it. */
export function closingLooks(items: ItemDecisions, statutory: StatutoryNotice): readonly RuleLook[] {
  const looks: RuleLook[] = [];
  for (const item of payItems) {
    const decision = items[item];
    const policy = "by" in decision ? decision.by?.policy : undefined;
    looks.push(itemLook("payer_order", closings[decision.verdict], decision, item, policy));
    if (
      decision.verdict === "needs_evidence" &&
      (decision.reason === "ends_differ" || decision.reason === "ambiguous_date")
    ) {
      looks.push(itemLook("ends_agree", "open", decision, item, policy));
    }
    if ("boundary" in decision && decision.boundary.kind !== "none") {
      looks.push({ ...itemLook("boundary", "passed", decision, item, policy), gave: decision.boundary.kind });
    }
  }
  looks.push(look("statute", "passed", statutory.kind, undefined));
  return looks;
}

/** One shape for all, written out: a million decisions make twenty million of these. */
function look(
  step: RuleLook["step"],
  outcome: RuleLook["outcome"],
  gave: string,
  policy: string | undefined,
): RuleLook {
  return { step, policy, item: undefined, outcome, gave, window: undefined, deadline: undefined };
}

function itemLook(
  step: RuleLook["step"],
  outcome: RuleLook["outcome"],
  decision: ItemDecision,
  item: PayItem,
  policy: string | undefined,
): RuleLook {
  return { step, policy, item, outcome, gave: gaveOf(decision), window: windowOf(decision), deadline: undefined };
}

function gaveOf(decision: ItemDecision): string {
  switch (decision.verdict) {
    case "covered":
      return "covered";
    case "invalid_data":
      return decision.problem;
    default:
      return decision.reason;
  }
}

const lookOutcomes = {
  covered: "passed",
  not_covered: "stopped",
  needs_evidence: "open",
  needs_local_law: "open",
  invalid_data: "stopped",
} as const satisfies Record<ItemDecision["verdict"], RuleLook["outcome"]>;

const closings = { ...lookOutcomes, covered: "chosen" } as const satisfies Record<
  ItemDecision["verdict"],
  RuleLook["outcome"]
>;
