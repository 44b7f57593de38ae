import type { ItemDecision } from "./coverage-decision";
import type { CoverageFacts, DatedFact } from "./coverage-facts";
import type { StatutoryNotice } from "./statutory-notice";
import { statutoryPeriod } from "./statutory-period";
import { type StatutoryRule, statutoryRules } from "./statutory-rules";

/** The statutory layer of a decision: what remains true when the maker's term has ended. */
export function localLaw(facts: CoverageFacts, makerItem: ItemDecision): StatutoryNotice {
  const { territory, dates } = facts.unit;
  const rules = territory === undefined ? [] : rulesIn(territory);
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

/** Looked up once for each territory: a company works in a handful of them. */
const known = new Map<string, readonly StatutoryRule[]>();

function rulesIn(territory: string): readonly StatutoryRule[] {
  const found = known.get(territory) ?? statutoryRules.filter((rule) => holdsIn(rule.territories, territory));
  if (known.size < most) known.set(territory, found);
  return found;
}

/** More codes than there are territories of countries. */
const most = 10_000;

function holdsIn(codes: readonly string[], territory: string): boolean {
  return codes.some((code) => territory === code || territory.startsWith(`${code}-`));
}

function dayOf(fact: DatedFact | undefined) {
  return fact?.kind === "known" && fact.precision === "day" ? fact.on.earliest : undefined;
}
