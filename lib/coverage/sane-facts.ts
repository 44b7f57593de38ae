import type { DayRange } from "@/lib/calendar/day-range";
import type { DataProblem } from "./coverage-decision";
import type { CoverageFacts, DatedFact, UnitDateName } from "./coverage-facts";

/** The first contradiction among the facts, or undefined. Where a day is a range, only a certain contradiction counts. */
export function dataProblem(facts: CoverageFacts): DataProblem | undefined {
  if (facts.unit.serialRemoved) return "serial_removed";
  return (
    wrongCell(facts) ?? madeTooLate(facts) ?? jobOutOfOrder(facts) ?? ownerOutOfOrder(facts) ?? paperOutOfOrder(facts)
  );
}

const datesThatStart: readonly UnitDateName[] = [
  "purchase",
  "delivery",
  "installation",
  "occupancy",
  "first_use",
  "registration",
  "shipped",
  "manufacture",
];

function wrongCell({ unit: { dates } }: CoverageFacts): DataProblem | undefined {
  for (const name of datesThatStart) {
    const fact = dates[name];
    if (fact?.kind === "wrong") return fact.problem;
  }
  return undefined;
}

/** Source: a trade list of rejection messages has "purchase date too early"; a serial read wrongly is the usual cause. */
function madeTooLate({ unit: { dates }, reported }: CoverageFacts): DataProblem | undefined {
  const { manufacture } = dates;
  if (manufacture?.kind !== "known") return undefined;
  if (isBefore(dates.purchase, manufacture)) return "purchase_before_manufacture";
  if (isBefore(dates.delivery, manufacture)) return "delivery_before_manufacture";
  if (isBefore(dates.installation, manufacture)) return "installation_before_manufacture";
  if (isBefore(dates.shipped, manufacture)) return "shipped_before_manufacture";
  if (isBefore(dates.registration, manufacture)) return "registration_before_manufacture";
  return reported < manufacture.on.earliest ? "reported_before_manufacture" : undefined;
}

function jobOutOfOrder(facts: CoverageFacts): DataProblem | undefined {
  const { reported, reportedIsRecorded, firstVisit, completed, unit } = facts;
  if (completed !== undefined && completed < reported) return "completed_before_reported";
  if (firstVisit !== undefined && reportedIsRecorded && firstVisit < reported) return "visited_before_reported";
  if (firstVisit !== undefined && completed !== undefined && completed < firstVisit) return "completed_before_visited";
  const sale = knownOn(unit.dates.purchase);
  return sale !== undefined && reported < sale.earliest ? "reported_before_purchase" : undefined;
}

function ownerOutOfOrder({ unit }: CoverageFacts): DataProblem | undefined {
  const { acquiredOn, transferRegisteredOn } = unit.owner;
  const sale = knownOn(unit.dates.purchase);
  if (acquiredOn !== undefined && transferRegisteredOn !== undefined && transferRegisteredOn < acquiredOn)
    return "transfer_registered_before_acquired";
  if (sale === undefined) return undefined;
  if (acquiredOn !== undefined && acquiredOn < sale.earliest) return "acquired_before_purchase";
  return unit.exchangedOn !== undefined && unit.exchangedOn < sale.earliest ? "exchanged_before_purchase" : undefined;
}

function paperOutOfOrder({ outForRepair, contracts }: CoverageFacts): DataProblem | undefined {
  for (const { from, until } of outForRepair) if (until < from) return "repair_span_reversed";
  for (const { stated } of contracts) {
    if (stated !== undefined && stated.endsOn < stated.startsOn) return "contract_paper_reversed";
  }
  return undefined;
}

function knownOn(fact: DatedFact | undefined): DayRange | undefined {
  return fact?.kind === "known" ? fact.on : undefined;
}

function isBefore(one: DatedFact | undefined, other: Extract<DatedFact, { readonly kind: "known" }>): boolean {
  return one?.kind === "known" && one.on.latest < other.on.earliest;
}
