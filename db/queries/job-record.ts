import { and, asc, desc, eq, lt, ne, or } from "drizzle-orm";
import type { Attachment, ClosedJob, EarlierJob, JobRecord, PartLine } from "@/lib/domain/job";
import type { Money } from "@/lib/domain/money";
import type { ProductType } from "@/lib/domain/product-type";
import type { Reading, ReadingOutcome } from "@/lib/domain/reading";
import type { Unit } from "@/lib/domain/unit";
import type { Reader } from "../database-types";
import { makers, models } from "../schema/catalogue";
import { attachments, jobs, partLines, readings } from "../schema/jobs";
import { units } from "../schema/register";

/** A job as the judging rooms see it, with the keys that the database knows it by. */
export interface StoredJob {
  readonly unitId: string;
  readonly jobId: string;
  readonly modelId: number;
  readonly makerId: number;
  readonly batchId: number | null;
  /** False where the job came without a serial and hangs on a placeholder unit. */
  readonly identified: boolean;
  readonly inRegister: boolean;
  readonly record: JobRecord;
}

/** The job with this number and everything under it; undefined where there is none. */
export async function loadJobRecord(db: Reader, jobNumber: string): Promise<StoredJob | undefined> {
  const [row] = await db
    .select({ job: jobs, unit: units, model: models, maker: makers })
    .from(jobs)
    .innerJoin(units, eq(units.unitId, jobs.unitId))
    .innerJoin(models, eq(models.modelId, units.modelId))
    .innerJoin(makers, eq(makers.makerId, models.makerId))
    .where(eq(jobs.jobNumber, jobNumber))
    .limit(1);
  if (row === undefined) return undefined;
  const { unitId, jobId } = row.job;
  return {
    unitId,
    jobId,
    modelId: row.model.modelId,
    makerId: row.maker.makerId,
    batchId: row.job.batchId,
    identified: row.unit.identified,
    inRegister: row.unit.inRegister,
    record: {
      job: closedJob(row.job),
      unit: unitOf(row.unit, {
        maker: row.maker.name,
        model: row.model.number,
        productType: row.model.productType as ProductType,
      }), // the schema's key
      partLines: await loadPartLines(db, unitId, jobId),
      readings: await loadReadings(db, unitId, jobId),
      attachments: await loadAttachments(db, unitId, jobId),
      earlier: await loadEarlier(db, row.job),
    },
  };
}

export function closedJob(row: typeof jobs.$inferSelect): ClosedJob {
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
    authorizationNumber: row.authorizationNumber ?? undefined,
    authorizedOn: row.authorizedOn ?? undefined,
    callbackOf: row.callbackOf ?? undefined,
  };
}

export function unitOf(row: typeof units.$inferSelect, model: Pick<Unit, "maker" | "model" | "productType">): Unit {
  return {
    ...model,
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

async function loadPartLines(db: Reader, unitId: string, jobId: string): Promise<PartLine[]> {
  const rows = await db
    .select()
    .from(partLines)
    .where(and(eq(partLines.unitId, unitId), eq(partLines.jobId, jobId)))
    .orderBy(asc(partLines.line));
  return rows.map((row) => ({
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
  }));
}

async function loadReadings(db: Reader, unitId: string, jobId: string): Promise<Reading[]> {
  const rows = await db
    .select()
    .from(readings)
    .where(and(eq(readings.unitId, unitId), eq(readings.jobId, jobId)))
    .orderBy(asc(readings.number));
  return rows.map((row) => ({
    number: row.number,
    check: row.check,
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
    note: row.note ?? undefined,
    technician: row.technician ?? undefined,
    takenAt: row.takenAt ?? undefined,
  }));
}

/** The table's constraints promise a value and unit for numbers and a word for findings and codes. */
function outcomeOf({ outcome, value, unit, word }: typeof readings.$inferSelect): ReadingOutcome {
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

/** Without the bytes: those are read one at a time, where they are shown. */
async function loadAttachments(db: Reader, unitId: string, jobId: string): Promise<Attachment[]> {
  const rows = await db
    .select({
      id: attachments.attachmentId,
      subject: attachments.subject,
      caption: attachments.caption,
      mediaType: attachments.mediaType,
      bytes: attachments.storedBytes,
      sha256: attachments.storedSha256,
      takenAt: attachments.takenAt,
    })
    .from(attachments)
    .where(and(eq(attachments.unitId, unitId), eq(attachments.jobId, jobId)))
    .orderBy(asc(attachments.subject), asc(attachments.attachmentId));
  return rows.map((row) => ({ ...row, takenAt: row.takenAt ?? undefined }));
}

async function loadEarlier(db: Reader, job: typeof jobs.$inferSelect): Promise<EarlierJob[]> {
  const rows = await db
    .select()
    .from(jobs)
    .where(
      and(
        eq(jobs.unitId, job.unitId),
        eq(jobs.status, "closed"),
        ne(jobs.jobId, job.jobId),
        or(
          lt(jobs.completedOn, job.completedOn),
          and(eq(jobs.completedOn, job.completedOn), lt(jobs.jobNumber, job.jobNumber)),
        ),
      ),
    )
    .orderBy(desc(jobs.completedOn), desc(jobs.jobNumber))
    .limit(200);
  return rows.map((row) => ({
    jobNumber: row.jobNumber,
    completedOn: row.completedOn,
    component: row.component ?? undefined,
    symptom: row.symptom ?? undefined,
    cause: row.cause,
  }));
}
