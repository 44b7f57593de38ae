import { addDays, laterOf } from "@/lib/calendar/day";
import { type DayRange, exactly, type LastDayRange, lastCoveredDays } from "@/lib/calendar/day-range";
import { type AnchorDay, addTerm, earlierEnd, type Term } from "@/lib/calendar/term";
import type { Contract } from "@/lib/domain/contract";
import type { Policy } from "@/lib/domain/policy";
import type { CoverWindow, EndConsidered, StartFound } from "./coverage-decision";
import type { CoverageFacts } from "./coverage-facts";
import { keptAlive, notRemediedDays } from "./not-remedied";
import { tolled } from "./tolled";
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
  /** Whether the line covers the whole unit, so that the paper's own last day is its end. */
  readonly isWholeUnit: boolean;
}

/** First and last covered day of one line of the terms: the term once, caps (earlier of), then what a repair adds. */
export function coverWindow(input: WindowInput): CoverWindow {
  const { start, term, anchorDay } = input;
  const plain = lastCoveredDays(start.on, term, anchorDay);
  const ends: EndConsidered[] = [{ rule: input.termRule, from: start.on, term, last: plain, addedDays: undefined }];
  const capped = applyPaper(applyCaps(plain, input, ends), input, ends);
  const last = applyNotRemedied(applyTolling(capped, input, ends), input, ends);
  return { start, first: firstDays(input), last, term, anchorDay, ends };
}

/** A contract's waiting period leaves its first days without cover: those of its paper, else those of its policy. */
function firstDays({ policy, contract, start }: WindowInput): DayRange {
  if (contract === undefined) return start.on;
  const { stated, waitDays = 0, soldOn } = contract;
  const waiting = policy.contract?.waiting;
  const waitedOut = waitDays > 0 ? addDays(stated?.startsOn ?? soldOn, waitDays) : waiting && addTerm(soldOn, waiting);
  if (waitedOut === undefined) return start.on;
  const opensOn = addDays(waitedOut, 1);
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

/** A contract whose paper states its last day runs to it; a line for less than the whole unit may end before. */
function applyPaper(last: LastDayRange, input: WindowInput, ends: EndConsidered[]): LastDayRange {
  const { contract, start, isWholeUnit } = input;
  const stated = contract?.stated;
  if (stated === undefined) return last;
  const end = exactly(stated.endsOn);
  ends.push({ rule: "contract_paper", from: start.on, term: undefined, last: end, addedDays: undefined });
  if (isWholeUnit) return end;
  return { earliest: earlierEnd(last.earliest, end.earliest), latest: earlierEnd(last.latest, end.latest) };
}

/** California holds for warranties that come with a sale, not for contracts bought apart. */
function isCalifornian({ policy, facts }: WindowInput): boolean {
  return facts.unit.territory === "US-CA" && policy.payer.kind !== "contract";
}

/**
 * Days from hand-over up to and including return are added to the term.
 * Source: California Civil Code 1795.6(a).
 */
function applyTolling(last: LastDayRange, input: WindowInput, ends: EndConsidered[]): LastDayRange {
  const { policy, facts, start } = input;
  if (facts.outForRepair.length === 0 || !(policy.tolling || isCalifornian(input))) return last;
  const earliest = tolled(last.earliest, facts.outForRepair);
  const latest = last.latest === last.earliest ? earliest : tolled(last.latest, facts.outForRepair);
  if (earliest.addedDays === 0) return last;
  const moved = { earliest: earliest.last, latest: latest.last };
  ends.push({ rule: "tolling", from: start.on, term: undefined, last: moved, addedDays: earliest.addedDays });
  return moved;
}

function applyNotRemedied(last: LastDayRange, input: WindowInput, ends: EndConsidered[]): LastDayRange {
  const { facts } = input;
  if (facts.outForRepair.length === 0 || !isCalifornian(input)) return last;
  const earliest = keptAlive(last.earliest, facts);
  const latest = keptAlive(last.latest, facts);
  if (earliest === last.earliest && latest === last.latest) return last;
  const moved = { earliest, latest };
  const repairs = facts.outForRepair.flatMap(({ until, sameTrouble }) =>
    sameTrouble === true && until <= facts.reported ? [until] : [],
  );
  const repairedOn = repairs.reduce(laterOf, repairs[0] ?? facts.reported);
  const term = { n: notRemediedDays, unit: "day" } as const;
  ends.push({ rule: "not_remedied", from: exactly(repairedOn), term, last: moved, addedDays: undefined });
  return moved;
}
