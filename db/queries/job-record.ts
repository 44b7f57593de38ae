import { and, asc, desc, eq, getTableColumns, inArray } from "drizzle-orm";
import type { CoverageFile } from "@/lib/coverage/job-coverage-facts";
import type { JobRecord } from "@/lib/domain/job";
import type { ProductType } from "@/lib/domain/product-type";
import type { Reader } from "../database-types";
import { makers, models } from "../schema/catalogue";
import { attachments, jobs, partLines, readings } from "../schema/jobs";
import { units } from "../schema/register";
import { loadCoverageFiles } from "./coverage-files";
import { attachmentOf, closedJob, earlierJobOf, partLineOf, readingOf, unitOf } from "./job-rows";

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
  /** What is on file for cover: contracts, transfers, exchanges, time out for repair. */
  readonly file: CoverageFile;
}

/** The job with this number and everything under it; undefined where there is none. */
export async function loadJobRecord(db: Reader, jobNumber: string): Promise<StoredJob | undefined> {
  return (await loadJobRecords(db, [jobNumber]))[0];
}

/** Jobs with everything under them, in the order asked for, at the cost of ten reads however many they are. */
export async function loadJobRecords(db: Reader, jobNumbers: readonly string[]): Promise<StoredJob[]> {
  if (jobNumbers.length === 0) return [];
  const rows = await db
    .select({ job: jobs, unit: units, model: models, maker: makers })
    .from(jobs)
    .innerJoin(units, eq(units.unitId, jobs.unitId))
    .innerJoin(models, eq(models.modelId, units.modelId))
    .innerJoin(makers, eq(makers.makerId, models.makerId))
    .where(inArray(jobs.jobNumber, [...jobNumbers]));
  const under = await loadUnder(
    db,
    rows.map((row) => row.job),
  );
  const files = await loadCoverageFiles(
    db,
    rows.map((row) => row.job.unitId),
  );
  const stored = rows.map(
    ({ job, unit, model, maker }): StoredJob => ({
      unitId: job.unitId,
      jobId: job.jobId,
      modelId: model.modelId,
      makerId: maker.makerId,
      batchId: job.batchId,
      identified: unit.identified,
      inRegister: unit.inRegister,
      record: {
        job: closedJob(job),
        unit: unitOf(unit, { maker: maker.name, model: model.number, productType: model.productType as ProductType }), // the schema's key
        ...under(job),
      },
      file: files(job.unitId),
    }),
  );
  const places = new Map(jobNumbers.map((number, place) => [number, place]));
  const placeOf = ({ record }: StoredJob) => places.get(record.job.jobNumber) ?? 0;
  return stored.sort((a, b) => placeOf(a) - placeOf(b));
}

type JobRow = typeof jobs.$inferSelect;
type Under = Pick<JobRecord, "partLines" | "readings" | "attachments" | "earlier">;

/** Children and earlier jobs of many jobs; the function handed back picks those of one. Attachments come without their bytes. */
async function loadUnder(db: Reader, of: readonly JobRow[]): Promise<(job: JobRow) => Under> {
  const unitIds = of.map((job) => job.unitId);
  const jobIds = of.map((job) => job.jobId);
  const among = (table: typeof partLines | typeof readings | typeof attachments) =>
    and(inArray(table.unitId, unitIds), inArray(table.jobId, jobIds));
  const lines = byJob(await db.select().from(partLines).where(among(partLines)).orderBy(asc(partLines.line)));
  const taken = byJob(await db.select().from(readings).where(among(readings)).orderBy(asc(readings.number)));
  const { content: _, ...described } = getTableColumns(attachments);
  const papers = byJob(
    await db
      .select(described)
      .from(attachments)
      .where(among(attachments))
      .orderBy(asc(attachments.subject), asc(attachments.attachmentId)),
  );
  const onUnits = await db
    .select()
    .from(jobs)
    .where(and(inArray(jobs.unitId, unitIds), eq(jobs.status, "closed")))
    .orderBy(desc(jobs.completedOn), desc(jobs.jobNumber));
  const fitted = await loadFitted(db, unitIds);
  return (job) => ({
    partLines: (lines.get(job.jobId) ?? []).map(partLineOf),
    readings: (taken.get(job.jobId) ?? []).map(readingOf),
    attachments: (papers.get(job.jobId) ?? []).map(attachmentOf),
    earlier: onUnits
      .filter((other) => other.unitId === job.unitId && isEarlier(other, job))
      .map((other) => earlierJobOf(other, fitted.get(other.jobId) ?? [])),
  });
}

/** Components of the parts that were fitted on any job of these units; a line that names none is for its job's own. */
async function loadFitted(db: Reader, unitIds: readonly string[]): Promise<ReadonlyMap<string, readonly string[]>> {
  const rows = await db
    .select({ jobId: partLines.jobId, component: partLines.component, failed: jobs.component })
    .from(partLines)
    .innerJoin(jobs, and(eq(jobs.unitId, partLines.unitId), eq(jobs.jobId, partLines.jobId)))
    .where(and(inArray(partLines.unitId, [...unitIds]), eq(partLines.role, "fitted")));
  const fitted = new Map<string, string[]>();
  for (const { jobId, component, failed } of rows) {
    const key = component ?? failed;
    if (key !== null) fitted.set(jobId, [...(fitted.get(jobId) ?? []), key]);
  }
  return fitted;
}

/** Completed before, or on the same day under a lower number. */
function isEarlier(other: JobRow, job: JobRow): boolean {
  if (other.completedOn !== job.completedOn) return other.completedOn < job.completedOn;
  return other.jobNumber < job.jobNumber;
}

function byJob<Row extends { readonly jobId: string }>(rows: readonly Row[]): Map<string, Row[]> {
  const groups = new Map<string, Row[]>();
  for (const row of rows) groups.set(row.jobId, [...(groups.get(row.jobId) ?? []), row]);
  return groups;
}
