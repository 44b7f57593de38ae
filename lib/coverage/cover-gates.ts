import type { Day } from "@/lib/calendar/day";
import { addTerm } from "@/lib/calendar/term";
import { causes } from "@/lib/domain/cause";
import type { Policy } from "@/lib/domain/policy";
import type { EvidenceReason, NotCoveredReason, ProofDocument, RuleStep } from "./coverage-decision";
import type { CoverageFacts } from "./coverage-facts";

export type Gate = {
  readonly step: RuleStep;
  readonly deadline: Day | undefined;
} /** `because` where a rule stood in the way and something lifts it. */ & (
  | { readonly kind: "passed"; readonly because?: string }
  | { readonly kind: "stopped"; readonly reason: NotCoveredReason }
  | { readonly kind: "open"; readonly reason: EvidenceReason; readonly document: ProofDocument }
);

/** Rules that hold for every pay item whatever the dates say: use, territory, transfer, exclusions. In this order. */
export function coverGates(policy: Policy, facts: CoverageFacts): readonly Gate[] {
  return [
    gateOfUse(policy, facts),
    gateOfTerritory(policy, facts),
    gateOfTransfer(policy, facts),
    gateOfExclusion(policy, facts),
  ];
}

function gateOfUse(policy: Policy, facts: CoverageFacts): Gate {
  const isOut = policy.use.kind === "household_only" && facts.unit.use === "commercial";
  return isOut ? stopped("use", "use_excluded") : passed("use");
}

function gateOfTerritory(policy: Policy, facts: CoverageFacts): Gate {
  if (policy.territories.length === 0) return passed("territory");
  const { territory } = facts.unit;
  if (territory === undefined) return open("territory", "territory_unknown", "address_record");
  const isIn = policy.territories.some((code) => territory === code || territory.startsWith(`${code}-`));
  return isIn ? passed("territory") : stopped("territory", "territory_excluded");
}

/**
 * Source: 16 CFR 701.3(a)(1): who may claim must be said; a limited warranty may stop at the first buyer. A full one may
 * not, while its stated time runs: 15 USC 2304(b), 16 CFR 700.6(b).
 */
function gateOfTransfer(policy: Policy, facts: CoverageFacts): Gate {
  const { owner } = facts.unit;
  if (policy.transfer.kind === "follows_unit" || owner.number <= 1) return passed("transfer");
  if (policy.designation === "full") return { ...passed("transfer"), kind: "passed", because: "full_warranty" };
  if (policy.transfer.kind === "original_purchaser_only") return stopped("transfer", "transfer_excluded");
  if (owner.acquiredOn === undefined) return open("transfer", "transfer_date_unknown", "transfer_record");
  const deadline = addTerm(owner.acquiredOn, policy.transfer.within);
  const isInTime = owner.transferRegisteredOn !== undefined && owner.transferRegisteredOn <= deadline;
  if (owner.transferRegisteredOn === undefined && facts.reported <= deadline) {
    return { ...open("transfer", "transfer_can_be_registered", "transfer_record"), deadline };
  }
  return isInTime
    ? { step: "transfer", kind: "passed", deadline }
    : { step: "transfer", kind: "stopped", reason: "transfer_excluded", deadline };
}

function gateOfExclusion(policy: Policy, facts: CoverageFacts): Gate {
  if (policy.excludedCauses.includes(facts.cause)) return stopped("exclusion", "cause_excluded");
  if (facts.component !== undefined && policy.excludedComponents.includes(facts.component)) {
    return stopped("exclusion", "component_excluded");
  }
  // An outside cause is not a defect of the goods, so no terms pay for it unless they name it; none here do.
  if (causes[facts.cause].kind === "outside" && facts.kind === "repair") return stopped("exclusion", "cause_excluded");
  if (facts.cause === "not_determined") return open("exclusion", "cause_unknown", "diagnosis");
  return passed("exclusion");
}

/** Nearly every rule passes nearly every job: one value for each step serves all. */
const gatesPassed = new Map<RuleStep, Gate>();

function passed(step: RuleStep): Gate {
  const known = gatesPassed.get(step);
  if (known !== undefined) return known;
  const gate: Gate = { step, kind: "passed", deadline: undefined };
  gatesPassed.set(step, gate);
  return gate;
}

function stopped(step: RuleStep, reason: NotCoveredReason): Gate {
  return { step, kind: "stopped", reason, deadline: undefined };
}

function open(step: RuleStep, reason: EvidenceReason, document: ProofDocument): Gate {
  return { step, kind: "open", reason, document, deadline: undefined };
}
