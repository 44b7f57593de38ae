import type { Day } from "@/lib/calendar/day";
import type { Contract } from "@/lib/domain/contract";
import type { JobRecord } from "@/lib/domain/job";
import type { CoverageFacts, DatedFact, OwnerFacts, RepairSpan, UnitDates } from "./coverage-facts";
import { knownDay, knownRange } from "./known-date";

/** What is on file beside the job and its unit. */
export interface CoverageFile {
  readonly contracts: readonly Contract[];
  readonly acquiredOn: Day | undefined;
  readonly transferRegisteredOn: Day | undefined;
  readonly exchangedOn: Day | undefined;
  /** Day on which the part that failed now was fitted under cover. */
  readonly replacedPartFittedOn: Day | undefined;
  readonly outForRepair: readonly RepairSpan[];
}

export const emptyFile: CoverageFile = {
  contracts: [],
  acquiredOn: undefined,
  transferRegisteredOn: undefined,
  exchangedOn: undefined,
  replacedPartFittedOn: undefined,
  outForRepair: [],
};

/** The facts of one job for `decideCoverage`. Nothing is filled in: a missing request day is marked as such. */
export function jobCoverageFacts(record: JobRecord, file: CoverageFile): CoverageFacts {
  const { job } = record;
  return {
    unit: unitFacts(record, file),
    reported: job.requestedOn ?? job.firstVisitOn ?? job.completedOn,
    reportedIsRecorded: job.requestedOn !== undefined,
    firstVisit: job.firstVisitOn,
    completed: job.completedOn,
    component: job.component,
    symptom: job.symptom,
    cause: job.cause,
    kind: kindOf(record),
    authorizationNumber: job.authorizationNumber,
    contracts: file.contracts,
    replacedPartFittedOn: file.replacedPartFittedOn,
    previousRepairOn: sameTroubleBefore(record),
    outForRepair: file.outForRepair,
  };
}

function unitFacts({ unit, attachments }: JobRecord, file: CoverageFile): CoverageFacts["unit"] {
  const hasReceipt = attachments.some((attachment) => attachment.subject === "receipt");
  const owner: OwnerFacts = {
    number: unit.ownerNumber,
    acquiredOn: file.acquiredOn,
    transferRegisteredOn: file.transferRegisteredOn,
  };
  const dates: UnitDates = {
    manufacture: madeOn(unit.madeFrom, unit.madeUntil),
    shipped: on(unit.shippedOn),
    purchase: unit.soldOn === undefined ? undefined : knownDay(unit.soldOn, hasReceipt ? "receipt" : undefined),
    delivery: on(unit.deliveredOn),
    installation: on(unit.installedOn),
    occupancy: on(unit.occupiedOn),
    registration: on(unit.registeredOn),
  };
  const { maker, model, productType, serial, use, territory } = unit;
  const { exchangedOn } = file;
  return { maker, model, productType, serial, serialRemoved: false, use, territory, dates, owner, exchangedOn };
}

function on(day: Day | undefined): DatedFact | undefined {
  return day === undefined ? undefined : knownDay(day);
}

function madeOn(from: Day | undefined, until: Day | undefined): DatedFact | undefined {
  if (from === undefined || until === undefined) return undefined;
  return knownRange({ earliest: from, latest: until });
}

/** Work on looks is its cause; a repair without a fitted part is an adjustment, by the trade's meaning of the word. */
function kindOf({ job, partLines }: JobRecord): CoverageFacts["kind"] {
  if (job.cause === "cosmetic") return "cosmetic";
  const hasPart = partLines.some((line) => line.role === "fitted");
  return !hasPart && job.cause === "component" ? "adjustment" : "repair";
}

function sameTroubleBefore({ job, earlier }: JobRecord): Day | undefined {
  const before = earlier.find(
    (entry) =>
      entry.completedOn <= job.completedOn &&
      ((job.component !== undefined && entry.component === job.component) ||
        (job.symptom !== undefined && entry.symptom === job.symptom)),
  );
  return before?.completedOn;
}
