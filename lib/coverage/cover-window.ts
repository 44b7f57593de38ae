import { addDays, daysBetween } from "@/lib/calendar/day";
import { type DayRange, exactly, type LastDayRange, lastCoveredDays } from "@/lib/calendar/day-range";
import { type AnchorDay, addTerm, earlierEnd, isOnOrBefore, type LastDay, type Term } from "@/lib/calendar/term";
import type { Contract } from "@/lib/domain/contract";
import type { Policy } from "@/lib/domain/policy";
import type { CoverWindow, EndConsidered, StartFound } from "./coverage-decision";
import type { CoverageFacts, RepairSpan } from "./coverage-facts";
import { isUnitEvent } from "./unit-event";

export interface WindowInput {
  readonly policy: Policy;
  readonly facts: CoverageFacts;
  readonly contract: Contract | undefined;
  readonly start: StartFound;
  readonly term: Term;
  /** Which rule gave the term: the policy's line, registering in time, or commercial use. */
  readonly termRule: "term" | "registration" | "use" | "replacement_part";
  readonly anchorDay: AnchorDay;
}

/** First and last covered day of one line of the terms: the term once, caps (earlier of), then time out for repair. */
export function coverWindow(input: WindowInput): CoverWindow {
  const { start, term, anchorDay } = input;
  const plain = lastCoveredDays(start.on, term, anchorDay);
  const ends: EndConsidered[] = [{ rule: input.termRule, from: start.on, term, last: plain, addedDays: undefined }];
  const capped = applyCaps(plain, input, ends);
  const last = applyTolling(capped, input, ends);
  return { start, first: firstDays(input), last, term, anchorDay, ends };
}

/** A contract's waiting period leaves its first days without cover. */
function firstDays({ policy, contract, start }: WindowInput): DayRange {
  const waiting = policy.contract?.waiting;
  if (waiting === undefined || contract === undefined) return start.on;
  const opensOn = addDays(addTerm(contract.soldOn, waiting), 1);
  return opensOn > start.on.latest ? exactly(opensOn) : start.on;
}

/** A cap from a day nobody knows cannot be applied; the plain end stands. */
function applyCaps(
  plain: LastDayRange,
  { policy, facts, anchorDay, termRule }: WindowInput,
  ends: EndConsidered[],
): LastDayRange {
  if (termRule === "replacement_part") return plain;
  let last = plain;
  for (const cap of policy.caps) {
    const fact = isUnitEvent(cap.from) ? facts.unit.dates[cap.from] : undefined;
    if (fact?.kind !== "known") continue;
    const end = lastCoveredDays(fact.on, cap.term, anchorDay);
    ends.push({ rule: "cap", from: fact.on, term: cap.term, last: end, addedDays: undefined });
    last = { earliest: earlierEnd(last.earliest, end.earliest), latest: earlierEnd(last.latest, end.latest) };
  }
  return last;
}

/**
 * Days from hand-over up to and including return are added to the term.
 * Source: California Civil Code 1795.6.
 */
function applyTolling(last: LastDayRange, { policy, facts, start }: WindowInput, ends: EndConsidered[]): LastDayRange {
  if (facts.outForRepair.length === 0) return last;
  if (!policy.tolling && facts.unit.territory !== "US-CA") return last;
  const earliest = tolled(last.earliest, facts.outForRepair);
  const latest = last.latest === last.earliest ? earliest : tolled(last.latest, facts.outForRepair);
  if (earliest.addedDays === 0) return last;
  const moved = { earliest: earliest.last, latest: latest.last };
  ends.push({ rule: "tolling", from: start.on, term: undefined, last: moved, addedDays: earliest.addedDays });
  return moved;
}

/** Only a repair that began under cover stops the clock; each extension may bring the next one under cover. */
function tolled(last: LastDay, spans: readonly RepairSpan[]): { readonly last: LastDay; readonly addedDays: number } {
  let moved = last;
  let addedDays = 0;
  for (const span of [...spans].sort((a, b) => (a.from < b.from ? -1 : 1))) {
    if (moved === "lifetime" || !isOnOrBefore(span.from, moved)) break;
    const days = daysBetween(span.from, span.until) + 1;
    moved = addDays(moved, days);
    addedDays += days;
  }
  return { last: moved, addedDays };
}
