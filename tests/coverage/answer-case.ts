import { day, daysBetween } from "@/lib/calendar/day";
import type { DayRange, LastDayRange } from "@/lib/calendar/day-range";
import { readRawDay } from "@/lib/calendar/raw-day";
import type { CountedTerm } from "@/lib/calendar/term";
import type { CoverageDecision, CoverWindow, ItemDecision } from "@/lib/coverage/coverage-decision";
import { decideCoverage } from "@/lib/coverage/decide-coverage";
import { decideFiling } from "@/lib/coverage/decide-filing";
import { windowOf } from "@/lib/coverage/decide-item";
import { decideRepeat } from "@/lib/coverage/decide-repeat";
import { statutoryPeriod } from "@/lib/coverage/statutory-period";
import { type StatutoryRule, statutoryRules } from "@/lib/coverage/statutory-rules";
import { payItems } from "@/lib/domain/pay-item";
import { caseFacts, plain } from "./case-facts";
import { anchorOf, casePolicies, readTerm } from "./case-policy";
import { type CoverageCase, group, type Loose, text } from "./coverage-case";

/** What the software says to a case, under the names of the case's `expect`. */
export function answerCase(given: CoverageCase): Loose {
  if (given.policy.claim_window !== undefined) return answerFiling(given);
  if (given.policy.repeat_rule !== undefined) return answerRepeat(given);
  const rule = statutoryRuleOf(given.policy);
  return rule === undefined ? answerCoverage(given) : answerStatute(rule, given);
}

function answerCoverage(given: CoverageCase): Loose {
  const decision = decideCoverage(caseFacts(given), casePolicies(given));
  const shown = shownItem(decision);
  const window = windowOf(shown);
  const raw = readRawDay(text(given.facts, "purchase_raw") ?? "");
  const tolling = window?.ends.find((end) => end.rule === "tolling");
  return {
    ...windowAnswer(window, given),
    last_parts_day: ended(windowOf(decision.items.parts)?.last),
    last_labour_day: ended(windowOf(decision.items.labour)?.last),
    ends_considered: window?.ends.map((end) => end.last.earliest),
    tolled_days: tolling?.addedDays,
    last_covered_day_before_tolling: tolling && window?.ends[0]?.last.earliest,
    decisive_date: decision.decisive?.on,
    verdict: decision.verdict,
    pays: Object.fromEntries(payItems.map((item) => [item, decision.items[item].verdict === "covered"])),
    payer: shown.verdict === "covered" ? shown.by.payerKind : "customer",
    boundary_day: "boundary" in shown && shown.boundary.kind !== "none",
    reason: reasonOf(shown),
    verdict_other_reason: reasonOf(shown),
    action: shown.verdict === "needs_evidence" ? `ask_for_${shown.document}` : undefined,
    payable_as: decision.goodwill.kind === "authorized" ? "goodwill" : undefined,
    overlap_day: ranged(decision.sharedDays),
    transfer_deadline: decision.looked.find((look) => look.step === "transfer")?.deadline,
    registration_deadline: decision.looked.find((look) => look.step === "registration")?.deadline,
    alternative_if_1904_system: raw.kind === "day_number" ? raw.ifFrom1904 : undefined,
  };
}

/** Days of the window; with a date that reads two ways, once for each reading. */
function windowAnswer(window: CoverWindow | undefined, given: CoverageCase): Loose {
  const raw = readRawDay(text(given.facts, "purchase_raw") ?? "");
  if (raw.kind === "two_readings") {
    const under = (purchase: string) =>
      windowAnswer(
        windowOf(shownItem(decideCoverage(caseFacts(typed(given, purchase)), casePolicies(given)))),
        typed(given, purchase),
      );
    const [mdy, dmy] = [under(raw.monthFirst), under(raw.dayFirst)];
    return {
      start: { mdy: mdy.start, dmy: dmy.start },
      last_covered_day: { mdy: mdy.last_covered_day, dmy: dmy.last_covered_day },
    };
  }
  return {
    start: ranged(window?.start?.on),
    start_moved_by: window?.start?.movedBy,
    first_covered_day: ranged(window?.first),
    last_covered_day: ended(window?.last),
  };
}

function typed(given: CoverageCase, purchase: string): CoverageCase {
  return { ...given, facts: { ...given.facts, purchase_raw: purchase } };
}

/** The item that a one-line answer speaks of: the first that is covered, else the parts. */
function shownItem({ items }: CoverageDecision): ItemDecision {
  return payItems.map((item) => items[item]).find((item) => item.verdict === "covered") ?? items.parts;
}

function reasonOf(decision: ItemDecision): string | undefined {
  if (decision.verdict === "covered") return undefined;
  if (decision.verdict === "invalid_data") return decision.problem;
  // The cases count a purchase date equal to the job's date among the placeholders.
  return decision.reason === "purchase_equals_job_date" ? "placeholder_date" : decision.reason;
}

function ranged(range: DayRange | undefined): unknown {
  return range !== undefined && range.earliest === range.latest ? range.earliest : range;
}

function ended(range: LastDayRange | undefined): unknown {
  return range !== undefined && range.earliest === range.latest ? range.earliest : range;
}

function answerFiling({ policy, facts }: CoverageCase): Loose {
  const clock = group(policy, "claim_window") ?? {};
  const by = /receiv|receipt/.test(JSON.stringify(policy)) ? "receipt" : "sending";
  const completedOn = plain(facts, String(clock.from ?? "completed"), "completed");
  const actOn = by === "receipt" ? plain(facts, "received", "submitted") : plain(facts, "submitted", "received");
  if (completedOn === undefined || actOn === undefined) throw new Error("the case lacks completion or filing");
  const decision = decideFiling({
    clock: {
      within: readTerm(clock) as CountedTerm, // windows are counted
      anchorDay: anchorOf(clock),
      by,
      roll: clock.roll === "next_business_day" ? "next_business_day" : "none",
    },
    completedOn,
    actOn,
    holidays: new Set(((policy.holidays ?? []) as string[]).map(day)), // a list where given
  });
  return {
    start: completedOn,
    last_covered_day: decision.lastDay,
    decisive_date: decision.decisiveOn,
    verdict: decision.kind === "in_window" ? "covered" : "not_covered",
    boundary_day:
      Math.abs(daysBetween(decision.decisiveOn, decision.lastDay)) < 2 && decision.decisiveOn >= decision.lastDay,
  };
}

function answerRepeat({ policy, facts }: CoverageCase): Loose {
  const rule = group(policy, "repeat_rule") ?? {};
  const previousCompletedOn = plain(facts, "previous_completed");
  const reportedOn = plain(facts, "reported");
  if (previousCompletedOn === undefined || reportedOn === undefined) throw new Error("the case lacks a date");
  const isSame = facts.same_failure === true;
  const previous = text(facts, "previous_component") ?? "one component";
  const decision = decideRepeat({
    rule: { within: readTerm(rule) as CountedTerm, same: "component_or_complaint" }, // windows are counted
    previousCompletedOn,
    reportedOn,
    previous: { component: previous, symptom: "one complaint" },
    now: {
      component: text(facts, "component") ?? (isSame ? previous : "another component"),
      symptom: isSame ? "one complaint" : "another complaint",
    },
  });
  const isRepeat = decision.kind === "repeat_within_window";
  return {
    window_last_day: decision.windowLastDay,
    decisive_date: reportedOn,
    verdict: isRepeat ? "not_payable" : "payable",
    reason: decision.kind,
    cost_bearer: isRepeat ? decision.costBearer : undefined,
    action: decision.kind === "unrelated" ? "narrative_must_say_unrelated" : undefined,
  };
}

/** The rule of local law that a case cites, with the case's own numbers where it gives them. */
function statutoryRuleOf(policy: Loose): StatutoryRule | undefined {
  const regime = text(policy, "regime");
  if (regime === undefined || /^Australia/.test(regime)) return undefined;
  const key = /22\(3\)/.test(regime)
    ? "uk_short_term_reject"
    : /^UK/.test(regime)
      ? "uk_presumption"
      : /presum|art\. 11/.test(JSON.stringify(policy))
        ? "eu_presumption"
        : "eu_conformity";
  const rule = statutoryRules.find((entry) => entry.key === key);
  if (rule === undefined || rule.period.kind !== "term" || policy.term === undefined) return rule;
  const term = readTerm(group(policy, "term") ?? {}) as CountedTerm; // statutes count
  return { ...rule, period: { ...rule.period, term, anchorDay: anchorOf(policy) } };
}

function answerStatute(rule: StatutoryRule, { facts }: CoverageCase): Loose {
  const decisiveOn = plain(facts, "apparent", "rejected", "reported");
  if (decisiveOn === undefined) throw new Error("the case does not say when the defect showed");
  const { state, owedBy, meaning } = statutoryPeriod(rule, {
    delivery: plain(facts, "delivery"),
    installation: plain(facts, "installation_notified", "installation"),
    repairCompleted: plain(facts, "conformity_repair_completed"),
    decisiveOn,
  });
  if (state.kind !== "runs" && state.kind !== "ended") return { verdict: "needs_evidence" };
  const past = state.lastDay === "lifetime" ? -1 : daysBetween(state.lastDay, decisiveOn);
  return {
    start: state.start,
    last_covered_day: state.lastDay,
    decisive_date: decisiveOn,
    verdict: state.kind === "runs" ? "covered" : "not_covered",
    payer: owedBy,
    boundary_day: past === 0 || past === 1,
    meaning: state.kind === "ended" ? meaning : undefined,
  };
}
