import { addDays, type Day, laterOf } from "@/lib/calendar/day";
import { addTerm, isOnOrBefore, lastCoveredDay } from "@/lib/calendar/term";
import type { StatutoryPeriod } from "./statutory-notice";
import type { StatutoryRule, StatutoryTerm } from "./statutory-rules";

export interface StatutoryFacts {
  readonly delivery: Day | undefined;
  /** Day the installer said the installation was complete. */
  readonly installation: Day | undefined;
  /** A repair that the customer chose as the remedy. */
  readonly repairCompleted: Day | undefined;
  /** Day the defect showed, or the goods were rejected. */
  readonly decisiveOn: Day;
}

/** One rule of local law against the dates. Its end may only move the burden of proof, as `meaning` says. */
export function statutoryPeriod(rule: StatutoryRule, facts: StatutoryFacts): StatutoryPeriod {
  const { key, name, owedBy, meaning, cite, mark } = rule;
  return { rule: key, name, owedBy, state: stateOf(rule, facts), meaning, cite, mark };
}

function stateOf({ period }: StatutoryRule, facts: StatutoryFacts): StatutoryPeriod["state"] {
  if (period.kind === "no_fixed_period") return period;
  const start = startOf(period, facts);
  if (start === undefined) return { kind: "start_unknown", missing: "delivery_note" };
  const lastDay = lastDayOf(period, start, facts);
  const { decisiveOn } = facts;
  return { kind: isOnOrBefore(decisiveOn, lastDay) ? "runs" : "ended", start, lastDay, decisiveOn };
}

function startOf(period: StatutoryTerm, { delivery, installation }: StatutoryFacts): Day | undefined {
  if (period.from === "delivery" || delivery === undefined) return delivery;
  return addDays(installation === undefined ? delivery : laterOf(delivery, installation), 1);
}

/** The extension is added to the last day of the period, once, if the repair fell inside it. */
function lastDayOf(period: StatutoryTerm, start: Day, { repairCompleted }: StatutoryFacts) {
  const plain = lastCoveredDay(start, period.term, period.anchorDay);
  const extra = period.afterRepair;
  if (extra === undefined || repairCompleted === undefined || plain === "lifetime") return plain;
  if (repairCompleted < extra.from || repairCompleted > plain) return plain;
  return addTerm(plain, extra.adds);
}
