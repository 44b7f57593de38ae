import type { DataProblem } from "./coverage-decision";
import type { CoverageFacts, DatedFact, UnitDateName } from "./coverage-facts";

/** The first contradiction among the facts, or undefined. Where a day is a range, only a certain contradiction counts. */
export function dataProblem(facts: CoverageFacts): DataProblem | undefined {
  const { dates } = facts.unit;
  if (facts.unit.serialRemoved) return "serial_removed";
  for (const name of datesThatStart) {
    const fact = dates[name];
    if (fact?.kind === "wrong") return fact.problem;
  }
  if (isBefore(dates.purchase, dates.manufacture)) return "purchase_before_manufacture";
  if (isBefore(dates.delivery, dates.manufacture)) return "delivery_before_manufacture";
  if (isBefore(dates.installation, dates.manufacture)) return "installation_before_manufacture";
  if (facts.completed !== undefined && facts.completed < facts.reported) return "completed_before_reported";
  if (dates.purchase?.kind === "known" && facts.reported < dates.purchase.on.earliest)
    return "reported_before_purchase";
  return undefined;
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

function isBefore(one: DatedFact | undefined, other: DatedFact | undefined): boolean {
  if (one?.kind !== "known" || other?.kind !== "known") return false;
  return one.on.latest < other.on.earliest;
}
