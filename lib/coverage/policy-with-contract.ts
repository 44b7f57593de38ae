import type { Contract } from "@/lib/domain/contract";
import type { Policy } from "@/lib/domain/policy";
import { isPlanOf } from "./plan-of";

/**
 * The policy of a service contract with the amounts that this unit's own paper states. What is left of what the paper
 * pays over its whole term is also the most that it can pay for one claim; of two limits the lower one holds.
 * @param jobNumber the job that is claimed, whose own claim takes nothing from it
 */
export function policyWithContract(policy: Policy, contracts: readonly Contract[], jobNumber?: string): Policy {
  const paper = contracts.find((contract) => isPlanOf(contract, policy));
  if (policy.contract === undefined || paper === undefined) return policy;
  const { deductibleCents = policy.contract.deductibleCents } = paper;
  const limits = [policy.contract.perClaimLimitCents, leftOf(paper, jobNumber)].filter((limit) => limit !== undefined);
  const perClaimLimitCents = limits.length === 0 ? undefined : Math.min(...limits);
  return { ...policy, contract: { ...policy.contract, deductibleCents, perClaimLimitCents } };
}

function leftOf({ limitCents, taken = [] }: Contract, jobNumber: string | undefined): number | undefined {
  if (limitCents === undefined) return undefined;
  const gone = taken.reduce((sum, entry) => (entry.jobNumber === jobNumber ? sum : sum + entry.cents), 0);
  return Math.max(0, limitCents - gone);
}
