import { payItems } from "@/lib/domain/pay-item";
import type { CoverSource, ItemDecision, LostAlternative } from "./coverage-decision";
import { windowOf } from "./decide-item";
import type { ItemDecisions } from "./decide-policy";

interface Answer {
  readonly source: CoverSource;
  readonly items: ItemDecisions;
}

/** Payers that were tried and won no pay item, each with its reason: for parts, else for the first item it decided. */
export function lostAlternatives(answers: readonly Answer[], items: ItemDecisions): readonly LostAlternative[] {
  return answers
    .filter(({ source }) => !payItems.some((item) => isBy(items[item], source)))
    .map(({ source, items: own }) => ({ source, reason: reasonOf(own.parts), window: windowOf(own.parts) }));
}

function isBy(decision: ItemDecision, source: CoverSource): boolean {
  if (decision.verdict !== "covered") return false;
  const { policy, version, campaign } = decision.by;
  return policy === source.policy && version === source.version && campaign === source.campaign;
}

function reasonOf(decision: ItemDecision): LostAlternative["reason"] {
  if (decision.verdict === "not_covered" || decision.verdict === "needs_evidence") return decision.reason;
  return "another_payer_first";
}
