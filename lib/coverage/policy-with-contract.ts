import type { Contract } from "@/lib/domain/contract";
import type { Policy } from "@/lib/domain/policy";
import { isPlanOf } from "./plan-of";

/**
 * The policy of a service contract with the amounts that this unit's own paper states. What the paper pays over its whole
 * term is also the most that it can pay for one claim; of two limits the lower one holds.
 */
export function policyWithContract(policy: Policy, contracts: readonly Contract[]): Policy {
  const paper = contracts.find((contract) => isPlanOf(contract, policy));
  if (policy.contract === undefined || paper === undefined) return policy;
  const { deductibleCents = policy.contract.deductibleCents, limitCents } = paper;
  const limits = [policy.contract.perClaimLimitCents, limitCents].filter((limit) => limit !== undefined);
  const perClaimLimitCents = limits.length === 0 ? undefined : Math.min(...limits);
  return { ...policy, contract: { ...policy.contract, deductibleCents, perClaimLimitCents } };
}
