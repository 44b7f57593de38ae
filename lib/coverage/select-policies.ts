import type { Day } from "@/lib/calendar/day";
import type { Contract } from "@/lib/domain/contract";
import type { PayerKind } from "@/lib/domain/job";
import { normalised } from "@/lib/domain/normalised";
import type { Policy } from "@/lib/domain/policy";
import { isSerialIn } from "./campaign-cover";
import type { CoverageFacts, UnitDateName } from "./coverage-facts";
import { isPlanOf } from "./plan-of";

export interface PolicyInForce {
  readonly policy: Policy;
  readonly contract: Contract | undefined;
}

/** Which end of the sale day picks the versions, where that day is known only as a range. */
export type SaleEnd = "earliest" | "latest";

/** The policy versions that speak of this unit, in the order in which they pay; the maker is primary on a shared day. */
export function policiesInForce(
  policies: readonly Policy[],
  facts: CoverageFacts,
  end: SaleEnd = "latest",
): readonly PolicyInForce[] {
  const found: PolicyInForce[] = [];
  for (const policy of policies) {
    if (!speaksOf(policy, facts)) continue;
    if (policy.payer.kind === "own_guarantee" && facts.previousRepairOn === undefined) continue;
    if (policy.payer.kind !== "contract") {
      if (isInForce(policy, governingDay(policy, facts, end), policies)) found.push({ policy, contract: undefined });
      continue;
    }
    for (const contract of facts.contracts) {
      if (!isPlanOf(contract, policy) || !isInForce(policy, contract.soldOn, policies)) continue;
      found.push({ policy, contract });
    }
  }
  return found.length < 2 ? found : found.sort((a, b) => rank(a.policy) - rank(b.policy));
}

/** The day whose version governs: the earlier repair for one's own guarantee, else the sale or the best stand-in. */
function governingDay(policy: Policy, facts: CoverageFacts, end: SaleEnd): Day | undefined {
  if (policy.payer.kind === "own_guarantee") return facts.previousRepairOn;
  const sale = saleStandIn(facts);
  return sale && facts.unit.dates[sale]?.kind === "known" ? facts.unit.dates[sale].on[end] : undefined;
}

/** The date of the unit that stands for its sale. */
export function saleStandIn(facts: CoverageFacts): UnitDateName | undefined {
  return saleStandIns.find((name) => facts.unit.dates[name]?.kind === "known");
}

const saleStandIns: readonly UnitDateName[] = [
  "purchase",
  "delivery",
  "installation",
  "occupancy",
  "registration",
  "shipped",
  "manufacture",
];

/** Without any date the newest version stands for all: the start is open then and the answer asks for proof. */
function isInForce(policy: Policy, on: Day | undefined, policies: readonly Policy[]): boolean {
  if (on === undefined) return !policies.some((other) => other.key === policy.key && other.version > policy.version);
  return policy.effectiveFrom <= on && (policy.effectiveTo === undefined || on <= policy.effectiveTo);
}

/** Whether maker, product type, model and serial of the unit lie in the scope of the policy. */
export function speaksOf({ maker, appliesTo }: Policy, { unit }: CoverageFacts): boolean {
  if (maker !== undefined && maker !== unit.maker) return false;
  const { productTypes, models, serials } = appliesTo;
  if (productTypes.length > 0 && !productTypes.includes(unit.productType)) return false;
  if (models.length > 0 && !models.some((root) => normalised(unit.model).startsWith(normalised(root)))) return false;
  return serials.length === 0 || (unit.serial !== undefined && isSerialIn(unit.serial, serials));
}

function rank(policy: Policy): number {
  const isHomeService = policy.contract?.type === "home_service";
  return isHomeService ? 4.5 : ranks[policy.payer.kind];
}

const ranks: Readonly<Record<PayerKind, number>> = {
  campaign: 0,
  maker: 1,
  own_guarantee: 2,
  dealer: 3,
  contract: 4,
  goodwill: 5,
  customer: 6,
};
