// Coverage: facts of one job and the policies in force go in; who pays each item, with every reason, comes out. Pure:
// no clock, no database. It shows terms, dates and reasons; policy wording and local law decide.
import { earlierOf, laterOf } from "@/lib/calendar/day";
import type { DayRange } from "@/lib/calendar/day-range";
import { type PayItem, payItems } from "@/lib/domain/pay-item";
import type { Policy } from "@/lib/domain/policy";
import { contractsWithoutTerms } from "./contracts-without-terms";
import type {
  CoverageAnswer,
  CoverageDecision,
  CoverWindow,
  DataProblem,
  ItemDecision,
  RuleLook,
} from "./coverage-decision";
import type { CoverageFacts } from "./coverage-facts";
import { decideCampaigns } from "./decide-campaigns";
import { windowOf } from "./decide-item";
import { decidePolicy, decisiveDay, type ItemDecisions, type PolicyOutcome } from "./decide-policy";
import { goodwillChance } from "./goodwill-chance";
import { localLaw, underLocalLaw } from "./local-law";
import { lostAlternatives } from "./lost-alternatives";
import { closingLooks, dataLook } from "./rule-looks";
import { dataProblem } from "./sane-facts";
import { type PolicyInForce, policiesInForce, saleStandIn } from "./select-policies";
import { isRange, verdictOf, whereVersionsAgree } from "./versions-agree";

/**
 * Decides per pay item in this order: data, campaign, start, ends, gates, order of payers, agreement of the two ends of
 * an interval, boundary, local law.
 * @param policies every version of every policy; those that do not speak of the unit are left out here
 * Checked: tests/coverage/coverage-cases.test.ts (each case names its source).
 */
export function decideCoverage(facts: CoverageFacts, policies: readonly Policy[]): CoverageDecision {
  const { answer, looked } = decide(facts, policies);
  return { ...answer, looked: looked() };
}

/** The same without the rules looked at, which are half the work: for a great many jobs of which nobody reads them. */
export function answerCoverage(facts: CoverageFacts, policies: readonly Policy[]): CoverageAnswer {
  return decide(facts, policies).answer;
}

interface Decided {
  readonly answer: CoverageAnswer;
  readonly looked: () => readonly RuleLook[];
}

function decide(facts: CoverageFacts, policies: readonly Policy[]): Decided {
  const problem = dataProblem(facts);
  if (problem !== undefined) return { answer: invalid(facts, problem), looked: () => [dataLook(problem)] };
  const inForce = policiesInForce(policies, facts);
  const decided = decideWith(inForce, facts, policies);
  const sale = saleStandIn(facts);
  if (sale === undefined || !isRange(facts.unit.dates[sale])) return decided;
  const others = policiesInForce(policies, facts, "earliest");
  if (isSame(inForce, others)) return decided;
  const early = decideWith(others, facts, policies);
  return {
    answer: whereVersionsAgree(decided.answer, early.answer, sale, facts),
    looked: () => [...early.looked(), ...decided.looked()],
  };
}

function decideWith(inForce: readonly PolicyInForce[], facts: CoverageFacts, policies: readonly Policy[]): Decided {
  const campaigns = decideCampaigns(policies, facts);
  const outcomes = decideInOrder(inForce, facts);
  const papers = contractsWithoutTerms(inForce, facts, policies);
  const answers = [
    ...campaigns.filter((entry) => entry.isNamed),
    ...outcomes,
    ...papers,
    ...campaigns.filter((entry) => !entry.isNamed),
  ];
  const chosen = eachItem((item) => choose(answers.map((answer) => answer.items[item])));
  const maker = outcomes.find((outcome) => outcome.source.payerKind === "maker");
  const statutory = localLaw(facts, maker?.items.parts ?? chosen.parts);
  const items = eachItem((item) => underLocalLaw(chosen[item], statutory));
  const decidedBy = inForce.find((entry) => entry.policy.key === sourceKey(items)) ?? inForce[0];
  const event = decidedBy?.policy.decisiveEvent ?? "reported";
  const decisiveOn = decisiveDay(event, facts);
  const answer: CoverageAnswer = {
    verdict: verdictOf(items),
    items,
    decisive: decisiveOn === undefined ? undefined : { event, on: decisiveOn },
    lost: lostAlternatives(answers, items),
    sharedDays: sharedDays(outcomes),
    goodwill: goodwillOf(inForce, outcomes, facts),
    statutory,
  };
  const looked = () => [
    dataLook(undefined),
    ...campaigns.map((entry) => entry.look),
    ...outcomes.flatMap((outcome) => outcome.looked()),
    ...papers.map((entry) => entry.look),
    ...closingLooks(items, statutory),
  ];
  return { answer, looked };
}

function isSame(one: readonly PolicyInForce[], other: readonly PolicyInForce[]): boolean {
  return one.length === other.length && one.every(({ policy }, index) => other[index]?.policy === policy);
}

/** Makers first, because a contract may begin on the day after their cover. */
function decideInOrder(inForce: readonly PolicyInForce[], facts: CoverageFacts): readonly PolicyOutcome[] {
  const outcomes: PolicyOutcome[] = [];
  let makerCoverEnd: DayRange | undefined;
  for (const entry of inForce) {
    const outcome = decidePolicy(entry, facts, makerCoverEnd);
    if (entry.policy.payer.kind === "maker") makerCoverEnd ??= endDays(outcome.wholeUnit);
    outcomes.push(outcome);
  }
  return outcomes;
}

/** The first payer that covers the item or may cover it; of refusals the first that has days to show. */
function choose(answers: readonly ItemDecision[]): ItemDecision {
  const open = answers.find((answer) => answer.verdict !== "not_covered");
  if (open !== undefined) return open;
  const refused = answers.find((answer) => windowOf(answer) !== undefined) ?? answers[0];
  if (refused !== undefined) return refused;
  return { verdict: "not_covered", reason: "no_policy", by: undefined, window: undefined, boundary: { kind: "none" } };
}

function eachItem(decide: (item: PayItem) => ItemDecision): ItemDecisions {
  return { parts: decide("parts"), labour: decide("labour"), trip: decide("trip"), diagnosis: decide("diagnosis") };
}

function sourceKey(items: ItemDecisions): string | undefined {
  for (const item of payItems) {
    const decision = items[item];
    if (decision.verdict === "covered") return decision.by.policy;
  }
  return "by" in items.parts ? items.parts.by?.policy : undefined;
}

function sharedDays(outcomes: readonly PolicyOutcome[]): DayRange | undefined {
  const maker = outcomes.find((outcome) => outcome.source.payerKind === "maker")?.wholeUnit;
  const contract = outcomes.find((outcome) => outcome.source.payerKind === "contract")?.wholeUnit;
  const [one, other] = [spanOf(maker), spanOf(contract)];
  if (one === undefined || other === undefined) return undefined;
  const earliest = laterOf(one.earliest, other.earliest);
  const latest = earlierOf(one.latest, other.latest);
  return earliest <= latest ? { earliest, latest } : undefined;
}

function spanOf(window: CoverWindow | undefined): DayRange | undefined {
  const end = window?.last.earliest;
  if (window?.first === undefined || end === undefined || end === "lifetime") return undefined;
  return { earliest: window.first.latest, latest: end };
}

function endDays(window: CoverWindow | undefined): DayRange | undefined {
  if (window === undefined) return undefined;
  const { earliest, latest } = window.last;
  return earliest === "lifetime" || latest === "lifetime" ? undefined : { earliest, latest };
}

function goodwillOf(inForce: readonly PolicyInForce[], outcomes: readonly PolicyOutcome[], facts: CoverageFacts) {
  for (const [index, entry] of inForce.entries()) {
    const outcome = outcomes[index];
    const chance = outcome && goodwillChance(entry, outcome, facts);
    if (chance !== undefined && chance.kind !== "none") return chance;
  }
  return { kind: "none" } as const;
}

function invalid(facts: CoverageFacts, problem: DataProblem): CoverageAnswer {
  const decision: ItemDecision = { verdict: "invalid_data", problem };
  const items = eachItem(() => decision);
  return {
    verdict: "invalid_data",
    items,
    decisive: { event: "reported", on: facts.reported },
    lost: [],
    sharedDays: undefined,
    goodwill: { kind: "none" },
    statutory: localLaw(facts, decision),
  };
}
