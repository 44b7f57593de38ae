import { addDays, type Day, day, laterOf } from "@/lib/calendar/day";
import { addTermToRange, type DayRange, exactly } from "@/lib/calendar/day-range";
import type { Contract } from "@/lib/domain/contract";
import type { Policy } from "@/lib/domain/policy";
import type { StartEvent, StartPoint } from "@/lib/domain/policy-start";
import type { EvidenceReason, ProofDocument, StartFound } from "./coverage-decision";
import type { CoverageFacts, DatedFact } from "./coverage-facts";
import { startDocuments } from "./start-documents";
import { isUnitEvent } from "./unit-event";

export type StartSearch =
  | { readonly kind: "found"; readonly start: StartFound }
  | { readonly kind: "open"; readonly reason: EvidenceReason; readonly document: ProofDocument };

/** What lies outside the unit's own dates: the contract that was bought and the end of the maker's cover before it. */
export interface StartContext {
  readonly contract: Contract | undefined;
  readonly makerCoverEnd: DayRange | undefined;
}

/**
 * The day a term runs from: the policy's own event, else its fallbacks in order, moved by the local floor.
 * Source: 16 CFR 701.3(a)(4) and 700.7(c); California Civil Code 1793.01 for the floor.
 * Checked: tests/coverage/coverage-cases.test.ts, groups start and dirt.
 */
export function findStart(
  policy: Policy,
  facts: CoverageFacts,
  context: StartContext,
  own: StartPoint | undefined,
): StartSearch {
  if (own === undefined && facts.unit.exchangedOn !== undefined && policy.replacementUnit === "new_term") {
    return found("exchange", exactly(facts.unit.exchangedOn), undefined, false, "day", undefined);
  }
  if (own === undefined && context.contract?.stated !== undefined) {
    return found("contract_paper", exactly(context.contract.stated.startsOn), undefined, false, "day", undefined);
  }
  const points = own === undefined ? [policy.start.from, ...policy.start.fallbacks] : [own];
  let firstDoubt: EvidenceReason | undefined;
  for (const [index, point] of points.entries()) {
    const fact = dateOf(point.event, facts, context);
    if (fact?.kind !== "known") {
      if (fact?.kind === "placeholder") firstDoubt ??= "placeholder_date";
      continue;
    }
    if (point.event === "purchase" && isJobDateTypedIn(fact, facts)) {
      firstDoubt ??= "purchase_equals_job_date";
      continue;
    }
    const on = point.plus === undefined ? fact.on : addTermToRange(fact.on, point.plus);
    return withLocalFloor(on, point.event, fact, index > 0, facts);
  }
  const event = points[0]?.event ?? "purchase";
  return { kind: "open", reason: firstDoubt ?? "start_unknown", document: startDocuments[event] };
}

/** First day of warranties that California lets start no earlier than delivery. */
const californiaFloorFrom: Day = day("2023-07-01");

function withLocalFloor(
  on: DayRange,
  event: StartEvent,
  fact: Extract<DatedFact, { kind: "known" }>,
  isFallback: boolean,
  facts: CoverageFacts,
): StartSearch {
  const { precision } = fact;
  const { delivery, purchase } = facts.unit.dates;
  const madeOn = purchase?.kind === "known" ? purchase.on.earliest : on.earliest;
  const isFloored = facts.unit.territory === "US-CA" && madeOn >= californiaFloorFrom && isUnitEvent(event);
  if (!isFloored || delivery?.kind !== "known" || delivery.on.latest <= on.earliest) {
    return found(event, on, fact.seenIn, isFallback, precision, undefined);
  }
  const moved = {
    earliest: laterOf(on.earliest, delivery.on.earliest),
    latest: laterOf(on.latest, delivery.on.latest),
  };
  return found("delivery", moved, delivery.seenIn, isFallback, delivery.precision, "statute");
}

function found(
  event: StartFound["event"],
  on: DayRange,
  seenIn: string | undefined,
  isFallback: boolean,
  precision: StartFound["precision"],
  movedBy: "statute" | undefined,
): StartSearch {
  return { kind: "found", start: { event, on, precision, seenIn, isFallback, movedBy } };
}

/** A purchase on the day of the job, without a paper that shows it, is usually the job's date typed in. */
function isJobDateTypedIn(fact: Extract<DatedFact, { kind: "known" }>, facts: CoverageFacts): boolean {
  if (fact.seenIn !== undefined || fact.precision !== "day") return false;
  return fact.on.earliest === facts.reported || fact.on.earliest === facts.completed;
}

function dateOf(event: StartEvent, facts: CoverageFacts, context: StartContext): DatedFact | undefined {
  if (isUnitEvent(event)) return facts.unit.dates[event];
  if (event === "contract_sale") return known(context.contract && exactly(context.contract.soldOn));
  if (event === "previous_repair") return known(facts.previousRepairOn && exactly(facts.previousRepairOn));
  const end = context.makerCoverEnd;
  return known(end && { earliest: addDays(end.earliest, 1), latest: addDays(end.latest, 1) });
}

function known(on: DayRange | undefined): DatedFact | undefined {
  if (on === undefined) return undefined;
  return { kind: "known", on, precision: on.earliest === on.latest ? "day" : "month", seenIn: undefined };
}
