// Rows of the database to the types that the judging rooms look at.
import type { Attachment, ClosedJob, EarlierJob, PartLine } from "@/lib/domain/job";
import type { Money } from "@/lib/domain/money";
import type { Reading, ReadingOutcome } from "@/lib/domain/reading";
import type { Unit } from "@/lib/domain/unit";
import type { attachments, jobs, partLines, readings } from "../schema/jobs";
import type { units } from "../schema/register";

/** What a row holds for the counts and the way back alone. */
export const jobColumnsOfCounts = ["failedOn", "countedAs", "batchId"] as const;
export type JobRow = Omit<typeof jobs.$inferSelect, (typeof jobColumnsOfCounts)[number]>;

export function closedJob(row: JobRow): ClosedJob {
  const money = (cents: number | null): Money | undefined =>
    cents === null ? undefined : { cents, currency: row.currency };
  return {
    jobNumber: row.jobNumber,
    status: row.status,
    requestedOn: row.requestedOn ?? undefined,
    firstVisitOn: row.firstVisitOn ?? undefined,
    diagnosedOn: row.diagnosedOn ?? undefined,
    partsOrderedOn: row.partsOrderedOn ?? undefined,
    partsReceivedOn: row.partsReceivedOn ?? undefined,
    completedOn: row.completedOn,
    invoicedOn: row.invoicedOn ?? undefined,
    complaint: row.complaint,
    causeNote: row.causeNote,
    correction: row.correction,
    symptom: row.symptom ?? undefined,
    component: row.component ?? undefined,
    failureMode: row.failureMode ?? undefined,
    cause: row.cause,
    visits: row.visits,
    technician: row.technician ?? undefined,
    payer: row.payer,
    labourMinutes: row.labourMinutes ?? undefined,
    labour: money(row.labourCents),
    trip: money(row.tripCents),
    tripMiles: row.tripMiles ?? undefined,
    authorizationNumber: row.authorizationNumber ?? undefined,
    authorizedOn: row.authorizedOn ?? undefined,
    callbackOf: row.callbackOf ?? undefined,
  };
}

/** The same of a unit. */
export const unitColumnsOfCounts = [
  "serialNormalised",
  "identified",
  "inRegister",
  "inServiceOn",
  "inServiceBasis",
  "batchId",
] as const;
type UnitRow = Omit<typeof units.$inferSelect, (typeof unitColumnsOfCounts)[number]>;

/** Every field by its name: a spread makes each of a million units an object of the slow kind. */
export function unitOf(
  row: UnitRow,
  { maker, model, productType }: Pick<Unit, "maker" | "model" | "productType">,
): Unit {
  return {
    maker,
    model,
    productType,
    serial: row.serial ?? undefined,
    madeFrom: row.madeFrom ?? undefined,
    madeUntil: row.madeUntil ?? undefined,
    shippedOn: row.shippedOn ?? undefined,
    soldOn: row.soldOn ?? undefined,
    deliveredOn: row.deliveredOn ?? undefined,
    installedOn: row.installedOn ?? undefined,
    occupiedOn: row.occupiedOn ?? undefined,
    registeredOn: row.registeredOn ?? undefined,
    retiredOn: row.retiredOn ?? undefined,
    recordedFrom: row.recordedFrom ?? undefined,
    use: row.use,
    territory: row.territory ?? undefined,
    ownerNumber: row.ownerNumber,
  };
}

export function partLineOf(row: Omit<typeof partLines.$inferSelect, "batchId">): PartLine {
  return {
    line: row.line,
    partNumber: row.partNumber,
    description: row.description,
    component: row.component ?? undefined,
    role: row.role,
    quantity: row.quantity,
    unitCost: { cents: row.unitCostCents, currency: row.currency },
    distributor: row.distributor ?? undefined,
    invoiceNumber: row.invoiceNumber ?? undefined,
    invoiceLine: row.invoiceLine ?? undefined,
    invoicedOn: row.invoicedOn ?? undefined,
  };
}

/** What a reading holds for papers alone: nothing is judged by it. */
export const readingColumnsOfPapers = ["note", "technician", "takenAt", "batchId"] as const;
type JudgedReadingRow = Omit<typeof readings.$inferSelect, (typeof readingColumnsOfPapers)[number]>;

export function readingOf(row: typeof readings.$inferSelect): Reading {
  return {
    ...judgedReadingOf(row),
    note: row.note ?? undefined,
    technician: row.technician ?? undefined,
    takenAt: row.takenAt ?? undefined,
  };
}

/** The same without what only papers show. */
export function judgedReadingOf(row: JudgedReadingRow): Reading {
  return {
    number: row.number,
    check: row.check,
    ...(row.own === null ? {} : { own: row.own }),
    pointA: row.pointA ?? undefined,
    pointB: row.pointB ?? undefined,
    mode: row.mode,
    outcome: outcomeOf(row),
    power: row.power,
    isolated: row.isolated ?? undefined,
    loadConnected: row.loadConnected ?? undefined,
    commanded: row.commanded ?? undefined,
    temperatureC: row.temperatureC ?? undefined,
    sheetLow: row.sheetLow ?? undefined,
    sheetHigh: row.sheetHigh ?? undefined,
    sheetReference: row.sheetReference ?? undefined,
    note: undefined,
    technician: undefined,
    takenAt: undefined,
  };
}

/** The table's constraints promise a value and unit for numbers and a word for findings and codes. */
function outcomeOf({ outcome, value, unit, word }: JudgedReadingRow): ReadingOutcome {
  switch (outcome) {
    case "number":
      return { kind: "number", value: value ?? 0, unit: unit ?? "" };
    case "finding":
      return { kind: "finding", word: word ?? "" };
    case "code":
      return { kind: "code", code: word ?? "" };
    default:
      return { kind: outcome };
  }
}

/** Everything of an attachment but its bytes. */
export type AttachmentRow = Pick<
  typeof attachments.$inferSelect,
  "attachmentId" | "subject" | "caption" | "mediaType" | "storedBytes" | "storedSha256" | "takenAt"
>;

export function attachmentOf(row: AttachmentRow): Attachment {
  return {
    id: row.attachmentId,
    subject: row.subject,
    caption: row.caption,
    mediaType: row.mediaType,
    bytes: row.storedBytes,
    sha256: row.storedSha256,
    takenAt: row.takenAt ?? undefined,
  };
}

export function earlierJobOf(row: typeof jobs.$inferSelect, fitted: readonly string[]): EarlierJob {
  return {
    jobNumber: row.jobNumber,
    completedOn: row.completedOn,
    component: row.component ?? undefined,
    symptom: row.symptom ?? undefined,
    cause: row.cause,
    requestedOn: row.requestedOn ?? undefined,
    payer: row.payer,
    fitted,
  };
}
