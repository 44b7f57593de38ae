import type { ItemDecision } from "./coverage-decision";
import type { CoverageFacts, DatedFact } from "./coverage-facts";
import type { StatutoryNotice } from "./statutory-notice";
import { statutoryPeriod } from "./statutory-period";
import { statutoryRules } from "./statutory-rules";

/** The statutory layer of a decision: what remains true when the maker's term has ended. */
export function localLaw(facts: CoverageFacts, makerItem: ItemDecision): StatutoryNotice {
  const { territory, dates } = facts.unit;
  const rules = territory === undefined ? [] : statutoryRules.filter((rule) => holdsIn(rule.territories, territory));
  const kind = kindOf(makerItem);
  return {
    kind,
    sentence: sentences[kind],
    periods: rules.map((rule) =>
      statutoryPeriod(rule, {
        delivery: dayOf(dates.delivery),
        installation: dayOf(dates.installation),
        repairCompleted: facts.previousRepairOn,
        decisiveOn: facts.reported,
      }),
    ),
  };
}

/** Where the law sets no number of days, the end of a maker's term settles nothing: a refusal becomes a question. */
export function underLocalLaw(decision: ItemDecision, notice: StatutoryNotice): ItemDecision {
  if (decision.verdict !== "not_covered" || !endings.has(decision.reason)) return decision;
  for (const { state } of notice.periods) {
    if (state.kind === "no_fixed_period") return { verdict: "needs_local_law", reason: state.because };
  }
  return decision;
}

const endings: ReadonlySet<string> = new Set(["term_ended", "no_policy"]);

function kindOf(makerItem: ItemDecision): StatutoryNotice["kind"] {
  switch (makerItem.verdict) {
    case "covered":
      return "maker_term_runs";
    case "not_covered":
      return makerItem.reason === "term_ended" ? "maker_term_ended" : "maker_does_not_pay";
    case "needs_local_law":
      return "maker_term_ended";
    case "needs_evidence":
    case "invalid_data":
      return "maker_term_unknown";
  }
}

const sentences: Readonly<Record<StatutoryNotice["kind"], string>> = {
  maker_term_runs: "Local statutory rights stand beside these terms; policy wording and local law decide.",
  maker_term_ended: "Maker term ended; local statutory rights may remain.",
  maker_does_not_pay: "The maker's terms do not pay for this; local statutory rights may remain.",
  maker_term_unknown: "The maker term is not settled; local statutory rights may remain in any case.",
};

function holdsIn(codes: readonly string[], territory: string): boolean {
  return codes.some((code) => territory === code || territory.startsWith(`${code}-`));
}

function dayOf(fact: DatedFact | undefined) {
  return fact?.kind === "known" && fact.precision === "day" ? fact.on.earliest : undefined;
}
