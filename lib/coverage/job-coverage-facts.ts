import type { Day } from "@/lib/calendar/day";
import { placeholderDays } from "@/lib/calendar/raw-day";
import type { Contract } from "@/lib/domain/contract";
import type { EarlierJob, JobRecord } from "@/lib/domain/job";
import type { Unit } from "@/lib/domain/unit";
import type { CoverageFacts, DatedFact, OwnerFacts, RepairSpan, UnitDates } from "./coverage-facts";
import { knownDay, knownRange } from "./known-date";

/** What is on file beside the job and its unit. */
export interface CoverageFile {
  readonly contracts: readonly Contract[];
  readonly acquiredOn: Day | undefined;
  readonly transferRegisteredOn: Day | undefined;
  readonly exchangedOn: Day | undefined;
  /** The unit that this one was handed over for, where it is on file: its dates are the ones that count. */
  readonly exchangedUnit: DatedUnit | undefined;
  readonly firstUsedOn: Day | undefined;
  readonly serialRemoved: boolean;
  /** Day on which the part that failed now was fitted under cover, where somebody entered it; else earlier jobs say. */
  readonly replacedPartFittedOn: Day | undefined;
  /** Spans that somebody entered; earlier jobs under cover add theirs. */
  readonly outForRepair: readonly RepairSpan[];
}

export type DatedUnit = Pick<
  Unit,
  "madeFrom" | "madeUntil" | "shippedOn" | "soldOn" | "deliveredOn" | "installedOn" | "occupiedOn" | "registeredOn"
>;

export const emptyFile: CoverageFile = {
  contracts: [],
  acquiredOn: undefined,
  transferRegisteredOn: undefined,
  exchangedOn: undefined,
  exchangedUnit: undefined,
  firstUsedOn: undefined,
  serialRemoved: false,
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
    replacedPartFittedOn: file.replacedPartFittedOn ?? fittedBefore(record),
    previousRepairOn: sameTroubleBefore(record),
    outForRepair: [...file.outForRepair, ...repairsBefore(record)],
  };
}

function unitFacts({ unit, attachments }: JobRecord, file: CoverageFile): CoverageFacts["unit"] {
  const hasReceipt = attachments.some((attachment) => attachment.subject === "receipt");
  const owner: OwnerFacts = {
    number: unit.ownerNumber,
    acquiredOn: file.acquiredOn,
    transferRegisteredOn: file.transferRegisteredOn,
  };
  const dated = file.exchangedUnit ?? unit;
  // A unit handed over in exchange may have been made after the sale whose date it carries.
  const isExchanged = file.exchangedOn !== undefined && file.exchangedUnit === undefined;
  const dates: UnitDates = {
    manufacture: isExchanged ? undefined : madeOn(dated.madeFrom, dated.madeUntil),
    shipped: on(dated.shippedOn),
    purchase: on(dated.soldOn, hasReceipt ? "receipt" : undefined),
    delivery: on(dated.deliveredOn),
    installation: on(dated.installedOn),
    occupancy: on(dated.occupiedOn),
    first_use: on(file.firstUsedOn),
    registration: on(dated.registeredOn),
  };
  const { maker, model, productType, serial, use, territory } = unit;
  const { exchangedOn, serialRemoved } = file;
  return { maker, model, productType, serial, serialRemoved, use, territory, dates, owner, exchangedOn };
}

function on(day: Day | undefined, seenIn?: string): DatedFact | undefined {
  if (day === undefined) return undefined;
  return placeholderDays.has(day) ? { kind: "placeholder", raw: day } : knownDay(day, seenIn);
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
  return earlier.find((entry) => entry.completedOn <= job.completedOn && isSameTrouble(job, entry))?.completedOn;
}

function isSameTrouble(job: JobRecord["job"], entry: EarlierJob): boolean {
  const isSame = (one: string | undefined, other: string | undefined) => one !== undefined && one === other;
  return isSame(job.component, entry.component) || isSame(job.symptom, entry.symptom);
}

/** A repair of a defect that was filed on the maker's account. */
function wasUnderMakersCover({ payer, cause }: EarlierJob): boolean {
  return (payer === "maker" || payer === "campaign") && cause === "component";
}

/** The last time a part of this component was fitted on the maker's account. */
function fittedBefore({ job, earlier }: JobRecord): Day | undefined {
  const { component } = job;
  if (component === undefined) return undefined;
  return earlier.find((entry) => wasUnderMakersCover(entry) && entry.fitted?.includes(component) === true)?.completedOn;
}

/**
 * A repair at home keeps the unit from its owner from the call until it is completed; only a recorded call counts.
 * Source: California Civil Code 1795.6(a), which runs from the buyer's notice for goods that stay in the home.
 */
function repairsBefore({ job, earlier }: JobRecord): readonly RepairSpan[] {
  return earlier.flatMap((entry) => {
    const { requestedOn, completedOn } = entry;
    if (!wasUnderMakersCover(entry) || requestedOn === undefined || requestedOn > completedOn) return [];
    return [{ from: requestedOn, until: completedOn, sameTrouble: isSameTrouble(job, entry) }];
  });
}
