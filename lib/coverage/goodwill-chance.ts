import { addTerm, isOnOrBefore } from "@/lib/calendar/term";
import type { GoodwillChance } from "./coverage-decision";
import type { CoverageFacts } from "./coverage-facts";
import { windowOf } from "./decide-item";
import { decisiveDay, type PolicyOutcome } from "./decide-policy";
import type { PolicyInForce } from "./select-policies";

/** What may be asked for after the term. A payment outside the terms stays apart from cover in every figure. */
export function goodwillChance(
  { policy }: PolicyInForce,
  outcome: PolicyOutcome,
  facts: CoverageFacts,
): GoodwillChance {
  const rule = policy.goodwill;
  const { parts } = outcome.items;
  if (rule === undefined || parts.verdict !== "not_covered" || parts.reason !== "term_ended") return { kind: "none" };
  const last = windowOf(parts)?.last.latest;
  const decisiveOn = decisiveDay(policy.decisiveEvent, facts);
  if (rule.within !== undefined && last !== undefined && last !== "lifetime" && decisiveOn !== undefined) {
    if (!isOnOrBefore(decisiveOn, addTerm(last, rule.within))) return { kind: "none" };
  }
  const { authorizationNumber } = facts;
  if (authorizationNumber !== undefined) return { kind: "authorized", source: outcome.source, authorizationNumber };
  return { kind: rule.authorizationRequired ? "needs_authorization" : "may_be_asked", source: outcome.source };
}
