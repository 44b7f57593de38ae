import { type PayItem, payItems } from "@/lib/domain/pay-item";
import type { CoverageAnswer, CoverageVerdict, ItemDecision } from "./coverage-decision";
import type { CoverageFacts, DatedFact, UnitDateName } from "./coverage-facts";
import { weight } from "./decide-item";
import type { ItemDecisions } from "./decide-policy";
import { startDocuments } from "./start-documents";

/**
 * The sale lies between two days under different versions of the terms: a pay item is decided where both versions agree,
 * and else asks for the paper that tells the day.
 */
export function whereVersionsAgree(
  late: CoverageAnswer,
  early: CoverageAnswer,
  sale: UnitDateName,
  facts: CoverageFacts,
): CoverageAnswer {
  const agreed = (item: PayItem) => agree(late.items[item], early.items[item], sale, facts);
  const items: ItemDecisions = {
    parts: agreed("parts"),
    labour: agreed("labour"),
    trip: agreed("trip"),
    diagnosis: agreed("diagnosis"),
  };
  return { ...late, items, verdict: verdictOf(items) };
}

export function isRange(fact: DatedFact | undefined): boolean {
  return fact?.kind === "known" && fact.on.earliest !== fact.on.latest;
}

/** The best that any pay item got. */
export function verdictOf(items: ItemDecisions): CoverageVerdict {
  let best: CoverageVerdict = items.parts.verdict;
  for (const item of payItems) if (weight[items[item].verdict] > weight[best]) best = items[item].verdict;
  return best;
}

function agree(late: ItemDecision, early: ItemDecision, sale: UnitDateName, facts: CoverageFacts): ItemDecision {
  if (late.verdict === early.verdict && payerOf(late) === payerOf(early)) return late;
  const fact = facts.unit.dates[sale];
  const isTwoReadings = fact?.kind === "known" && fact.precision === "two_readings";
  return {
    verdict: "needs_evidence",
    reason: isTwoReadings ? "ambiguous_date" : "ends_differ",
    document: startDocuments[sale],
    by: "by" in late ? late.by : undefined,
    window: "window" in late ? late.window : undefined,
  };
}

function payerOf(decision: ItemDecision): string | undefined {
  return decision.verdict === "covered" ? decision.by.payerName : undefined;
}
