import { eq, sql } from "drizzle-orm";
import type { Day } from "@/lib/calendar/day";
import type { EarlierJob, PayerKind, PhotoSubject } from "@/lib/domain/job";
import type { ProductType } from "@/lib/domain/product-type";
import type { Unit } from "@/lib/domain/unit";
import { parseAnswer } from "@/lib/sheets/parse-answer";
import type { SheetAnswer } from "@/lib/sheets/sheet-answer";
import type { Reader } from "../database-types";
import { makers, models } from "../schema/catalogue";
import { jobs } from "../schema/jobs";
import { units } from "../schema/register";
import { earlierJobOf, unitOf } from "./job-rows";

/** A job that is worked by a check sheet, with what phones have sent of it. */
export interface SheetJob {
  readonly unitId: string;
  readonly jobId: string;
  readonly modelId: number;
  readonly inServiceOn: Day | undefined;
  readonly jobNumber: string;
  readonly requestedOn: Day;
  readonly complaint: string;
  readonly symptom: string;
  readonly technician: string | undefined;
  readonly payer: PayerKind;
  readonly callbackOf: string | undefined;
  readonly isClosed: boolean;
  readonly unit: Unit;
  readonly answers: readonly SheetAnswer[];
  readonly photos: readonly SheetPhoto[];
  /** Closed jobs on the same unit, newest first. */
  readonly earlier: readonly EarlierJob[];
}

export interface SheetPhoto {
  readonly id: string;
  readonly check: string | undefined;
  readonly subject: PhotoSubject;
}

/** The open job with this number; undefined where none was ever opened here. */
export async function loadSheetJob(db: Reader, jobNumber: string): Promise<SheetJob | undefined> {
  const [job] = await db.rows<OpenRow>(sql`
    select unit_id::text as "unitId", job_id::text as "jobId", job_number as "jobNumber", requested_on::text as "requestedOn",
      complaint, symptom, technician, payer, callback_of as "callbackOf", closed_at is not null as "isClosed"
    from open_jobs where job_number = ${jobNumber}`);
  if (job === undefined) return undefined;
  const [row] = await db
    .select({ unit: units, model: models, maker: makers })
    .from(units)
    .innerJoin(models, eq(models.modelId, units.modelId))
    .innerJoin(makers, eq(makers.makerId, models.makerId))
    .where(eq(units.unitId, job.unitId));
  if (row === undefined) return undefined;
  const earlier = await db.select().from(jobs).where(eq(jobs.unitId, job.unitId));
  return {
    ...job,
    technician: job.technician ?? undefined,
    callbackOf: job.callbackOf ?? undefined,
    modelId: row.model.modelId,
    inServiceOn: row.unit.inServiceOn ?? undefined,
    unit: unitOf(row.unit, {
      maker: row.maker.name,
      model: row.model.number,
      productType: row.model.productType as ProductType, // the schema's key
    }),
    answers: await loadAnswers(db, job),
    photos: await loadPhotos(db, job),
    earlier: earlier
      .filter((other) => other.status === "closed" && other.jobNumber !== jobNumber)
      .sort((a, b) => (a.completedOn < b.completedOn ? 1 : -1))
      .map((other) => earlierJobOf(other, [])),
  };
}

type OpenRow = {
  readonly unitId: string;
  readonly jobId: string;
  readonly jobNumber: string;
  readonly requestedOn: Day;
  readonly complaint: string;
  readonly symptom: string;
  readonly technician: string | null;
  readonly payer: PayerKind;
  readonly callbackOf: string | null;
  readonly isClosed: boolean;
};

type JobKey = Pick<SheetJob, "unitId" | "jobId">;

export async function loadAnswers(db: Reader, { unitId, jobId }: JobKey): Promise<readonly SheetAnswer[]> {
  const rows = await db.rows<{ body: unknown }>(
    sql`select body from sheet_answers where unit_id = ${unitId} and job_id = ${jobId} order by sequence, answer_id`,
  );
  return rows.map(({ body }) => {
    const read = parseAnswer(body);
    if (!read.ok)
      throw new Error(`An answer is stored wrongly: ${read.problems.map(({ sentence }) => sentence).join("; ")}`);
    return read.answer;
  });
}

async function loadPhotos(db: Reader, { unitId, jobId }: JobKey): Promise<readonly SheetPhoto[]> {
  const rows = await db.rows<{ id: string; check: string | null; subject: PhotoSubject }>(sql`
    select photo_id as id, check_key as check, subject from sheet_photos
    where unit_id = ${unitId} and job_id = ${jobId} order by received_at, photo_id`);
  return rows.map(({ check, ...row }) => ({ ...row, check: check ?? undefined }));
}
