import { and, eq, sql } from "drizzle-orm";
import type { Day } from "@/lib/calendar/day";
import type { Cause } from "@/lib/domain/cause";
import type { Transaction } from "../../database-types";
import { inTransaction } from "../../in-transaction";
import { loadAnswers } from "../../queries/sheet-job";
import { jobs } from "../../schema/jobs";
import type { StoreAnswer } from "../answer-once";
import { refreshUnclaimed } from "../money/refresh-unclaimed";
import { refreshCountsOfUnit } from "../refresh-counts";
import { run } from "../staging/run";
import { intakeLock } from "../store-import";
import { insertPartLines, pricedParts, type UsedPart } from "./insert-part-lines";
import { insertReadings } from "./insert-readings";

export interface ClosingJob {
  readonly jobNumber: string;
  /** As the technician left it; nothing rewrites it later without who, when and why. Undefined: as the desk took it. */
  readonly complaint: string | undefined;
  readonly causeNote: string;
  readonly correction: string;
  readonly cause: Cause;
  readonly component: string | undefined;
  readonly failureMode: string | undefined;
  readonly parts: readonly UsedPart[];
  /** Number of the earlier job on this unit that it returns to; undefined leaves what the desk said. */
  readonly callbackOf: string | undefined;
  readonly visits: number;
  readonly labourMinutes: number | undefined;
  /** The day in the shop's zone. */
  readonly today: Day;
  readonly by: string;
}

export type ClosedResult =
  | { readonly kind: "closed" }
  | { readonly kind: "no such job" }
  | { readonly kind: "closed already" }
  /** A file has closed it meanwhile, on another unit or without its serial. */
  | { readonly kind: "on another unit" }
  /** The unit has no closed job of that number. */
  | { readonly kind: "no such earlier job" }
  /** No price is on file for the part, and none was given. */
  | { readonly kind: "no price"; readonly partNumber: string }
  /** The day is before the one on which the job was asked for: a clock is wrong. */
  | { readonly kind: "before request"; readonly requestedOn: Day };

/** Makes the closed job with its readings, photos and parts, and counts it, in one transaction. `store` keeps the answer in it. */
export async function closeJob(
  job: ClosingJob,
  store: StoreAnswer,
  answer: { readonly status: number; readonly body: unknown },
): Promise<ClosedResult> {
  return await inTransaction(async (tx): Promise<ClosedResult> => {
    await run(tx, `select pg_advisory_xact_lock(${intakeLock})`);
    const open = await findOpen(tx, job.jobNumber);
    if (open === undefined) return { kind: "no such job" };
    if (open.closed) return { kind: "closed already" };
    if (job.today < open.requestedOn) return { kind: "before request", requestedOn: open.requestedOn };
    if (job.callbackOf !== undefined && !(await hasJob(tx, open.unitId, job.callbackOf)))
      return { kind: "no such earlier job" };
    const parts = await pricedParts(tx, job.parts);
    if (typeof parts === "string") return { kind: "no price", partNumber: parts };
    const filed = await filedJob(tx, job.jobNumber);
    if (filed !== undefined && filed.unitId !== open.unitId) return { kind: "on another unit" };
    if (filed === undefined) await tx.insert(jobs).values(rowOf(job, open));
    else await tellFiled(tx, job, open);
    if (filed === undefined || !filed.hasLines) await insertPartLines(tx, open, parts, job.component);
    await insertReadings(tx, open, await loadAnswers(tx, open), open.technician ?? undefined);
    await moveEvidence(tx, open);
    await keepFromFiles(tx, open, filed, job.by);
    await refreshCountsOfUnit(tx, open.unitId);
    await refreshUnclaimed(tx, [open.unitId]);
    await store(tx, answer);
    return { kind: "closed" };
  });
}

type OpenJob = {
  readonly unitId: string;
  readonly jobId: string;
  readonly modelId: number;
  readonly requestedOn: Day;
  readonly symptom: string;
  readonly complaint: string;
  readonly technician: string | null;
  readonly payer: (typeof jobs.$inferInsert)["payer"];
  readonly callbackOf: string | null;
  readonly closed: boolean;
  readonly startedOn: Day | null;
  readonly currency: (typeof jobs.$inferInsert)["currency"];
};

async function findOpen(tx: Transaction, jobNumber: string): Promise<OpenJob | undefined> {
  const [open] = await tx.rows<OpenJob>(sql`
    select o.unit_id::text as "unitId", o.job_id::text as "jobId", u.model_id as "modelId", o.requested_on::text as "requestedOn",
      o.symptom, o.complaint, o.technician, o.payer, o.callback_of as "callbackOf", o.closed_at is not null as closed,
      (select (r.started_at at time zone coalesce((select time_zone from shop), 'UTC'))::date::text from sheet_runs r
       where r.unit_id = o.unit_id and r.job_id = o.job_id) as "startedOn",
      coalesce((select currency from shop), 'USD') as currency
    from open_jobs o join units u using (unit_id) where o.job_number = ${jobNumber} for update of o`);
  return open;
}

type FiledJob = {
  readonly unitId: string;
  readonly hasLines: boolean;
  /** What the file says, before the technician's words go over it. */
  readonly told: Readonly<Record<string, unknown>>;
};

/** The closed job of that number, where a file brought it while the sheet was open. */
async function filedJob(tx: Transaction, jobNumber: string): Promise<FiledJob | undefined> {
  const [filed] = await tx.rows<FiledJob>(sql`
    select j.unit_id::text as "unitId", to_jsonb(j) as told,
      exists (select from part_lines p where p.unit_id = j.unit_id and p.job_id = j.job_id) as "hasLines"
    from jobs j where j.job_number = ${jobNumber} for update of j`);
  return filed;
}

/** Whoever was at the machine tells what was found; days, payer, parts and money stay as the file has them. */
async function tellFiled(tx: Transaction, job: ClosingJob, open: OpenJob): Promise<void> {
  const { complaint, causeNote, correction, cause, component, failureMode } = rowOf(job, open);
  await tx
    .update(jobs)
    .set({ complaint, causeNote, correction, cause, component, failureMode })
    .where(and(eq(jobs.unitId, open.unitId), eq(jobs.jobId, open.jobId)));
}

async function hasJob(tx: Transaction, unitId: string, jobNumber: string): Promise<boolean> {
  return (await tx.rows(sql`select 1 from jobs where unit_id = ${unitId} and job_number = ${jobNumber}`)).length > 0;
}

function rowOf(job: ClosingJob, open: OpenJob): typeof jobs.$inferInsert {
  const started = open.startedOn ?? job.today;
  // Whatever the clocks said, the visit lies between the request and today: the middle one of the three.
  const visited = [open.requestedOn, started, job.today].sort()[1] ?? job.today;
  return {
    unitId: open.unitId,
    jobId: open.jobId,
    jobNumber: job.jobNumber,
    status: "closed",
    requestedOn: open.requestedOn,
    firstVisitOn: visited,
    diagnosedOn: visited,
    completedOn: job.today,
    complaint: job.complaint ?? open.complaint,
    causeNote: job.causeNote,
    correction: job.correction,
    symptom: open.symptom,
    component: job.component ?? null,
    failureMode: job.failureMode ?? null,
    cause: job.cause,
    visits: job.visits,
    technician: open.technician,
    payer: open.payer,
    labourMinutes: job.labourMinutes ?? null,
    currency: open.currency,
    callbackOf: job.callbackOf ?? open.callbackOf,
  };
}

/** Photos become attachments of the closed job; the open job and its run say when they ended. */
async function moveEvidence(tx: Transaction, { unitId, jobId }: OpenJob): Promise<void> {
  await tx.execute(sql`
    insert into attachments (unit_id, job_id, attachment_id, subject, caption, media_type, width, height, taken_at, received_sha256, stored_sha256, stored_bytes, content)
    select unit_id, job_id, attachment_id, subject, caption, 'image/jpeg', width, height, taken_at, received_sha256, stored_sha256, octet_length(content), content
    from sheet_photos where unit_id = ${unitId} and job_id = ${jobId}`);
  await tx.execute(sql`delete from sheet_photos where unit_id = ${unitId} and job_id = ${jobId}`);
  await tx.execute(
    sql`update open_jobs set closed_at = greatest(now(), opened_at) where unit_id = ${unitId} and job_id = ${jobId}`,
  );
  await tx.execute(
    sql`update sheet_runs set closed_at = greatest(now(), started_at) where unit_id = ${unitId} and job_id = ${jobId}`,
  );
}

/** What the technician wrote and found holds against a later file, which is told where it says otherwise. */
async function keepFromFiles(
  tx: Transaction,
  { unitId, jobId }: OpenJob,
  filed: FiledJob | undefined,
  by: string,
): Promise<void> {
  const before = JSON.stringify(filed?.told ?? {});
  await tx.execute(sql`
    update hand_edits set lifted_at = now() where table_name = 'jobs' and key = ${unitId} || chr(31) || ${jobId} and lifted_at is null
      and column_name in ('complaint', 'cause_note', 'correction', 'cause', 'component', 'failure_mode')`);
  await tx.execute(sql`
    insert into hand_edits (table_name, key, column_name, value_before, value, at, by, reason)
    select 'jobs', ${unitId} || chr(31) || ${jobId}, c.name, ${before}::jsonb -> c.name, to_jsonb(j) -> c.name, now(), ${by}, 'closed at the machine with the check sheet'
    from jobs j, unnest(array['complaint', 'cause_note', 'correction', 'cause', 'component', 'failure_mode']) as c(name)
    where j.unit_id = ${unitId} and j.job_id = ${jobId}`);
}
