import type { Contract } from "@/lib/domain/contract";
import type { Policy } from "@/lib/domain/policy";
import type { CoverSource, ItemDecision, NotCoveredReason, RuleLook } from "./coverage-decision";
import type { CoverageFacts } from "./coverage-facts";
import type { ItemDecisions } from "./decide-policy";
import { isPlanOf } from "./plan-of";
import { type PolicyInForce, speaksOf } from "./select-policies";

export interface ContractOutcome {
  readonly source: CoverSource;
  readonly items: ItemDecisions;
  readonly look: RuleLook;
}

/**
 * Contracts on file of which no terms were looked at: their plan is not on file, has no version for the day of the sale,
 * or leaves out this kind of unit. A contract that someone paid for is never passed over in silence.
 */
export function contractsWithoutTerms(
  inForce: readonly PolicyInForce[],
  facts: CoverageFacts,
  policies: readonly Policy[],
): readonly ContractOutcome[] {
  if (facts.contracts.length === 0) return [];
  return facts.contracts
    .filter((contract) => !inForce.some((entry) => entry.contract === contract) && couldRun(contract, facts))
    .map((contract) => outcomeOf(contract, facts, policies));
}

/** A contract that had not begun, had ended by its own paper or was cancelled can pay nothing, whatever its plan says. */
function couldRun({ soldOn, cancelledOn, stated }: Contract, { reported }: CoverageFacts): boolean {
  if (reported < soldOn || (cancelledOn !== undefined && reported > cancelledOn)) return false;
  return stated === undefined || (reported >= stated.startsOn && reported <= stated.endsOn);
}

function outcomeOf(contract: Contract, facts: CoverageFacts, policies: readonly Policy[]): ContractOutcome {
  const versions = policies.filter((policy) => isPlanOf(contract, policy));
  const isOfOtherUnits = versions.length > 0 && !versions.some((policy) => speaksOf(policy, facts));
  const source: CoverSource = {
    policy: contract.policy,
    version: 0,
    policyName:
      versions.at(-1)?.name ?? (contract.policy === "" ? "A plan that is not named" : `Plan ${contract.policy}`),
    payerKind: "contract",
    payerName: versions.at(-1)?.payer.name ?? `Provider of contract ${contract.number}`,
    campaign: undefined,
    campaignName: undefined,
    contract: contract.number,
  };
  const item = isOfOtherUnits ? refused(source, "plan_not_for_unit") : unknown(source);
  return {
    source,
    items: { parts: item, labour: item, trip: item, diagnosis: item },
    look: {
      step: "payer_order",
      policy: contract.policy,
      item: undefined,
      outcome: isOfOtherUnits ? "stopped" : "open",
      gave: isOfOtherUnits ? "plan_not_for_unit" : "contract_terms_unknown",
      window: undefined,
      deadline: undefined,
    },
  };
}

function unknown(by: CoverSource): ItemDecision {
  return { verdict: "needs_evidence", reason: "contract_terms_unknown", document: "contract", by, window: undefined };
}

function refused(by: CoverSource, reason: NotCoveredReason): ItemDecision {
  return { verdict: "not_covered", reason, by, window: undefined, boundary: { kind: "none" } };
}
