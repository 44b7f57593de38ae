import { createHash } from "node:crypto";
import { sql } from "drizzle-orm";
import { isOwnKey } from "@/lib/domain/own-check";
import { ownChecksOf } from "@/lib/sheets/sheet";
import type { SheetAnswer } from "@/lib/sheets/sheet-answer";
import type { Transaction } from "../../database-types";
import { inTransaction } from "../../in-transaction";
import { loadSheetRun } from "../../queries/sheet-run";
import { refreshUnclaimed } from "../money/refresh-unclaimed";
import { insertReadings } from "./insert-readings";
import { type LockedJob, lockedJob } from "./locked-job";

export type KeptAnswer =
  | { readonly kind: "kept" }
  /** It came before, word for word. */
  | { readonly kind: "here already" }
  /** The phone's number of this answer stands for another one: nothing was changed. */
  | { readonly kind: "other answer" }
  /** A check of the company's own that is not on the sheets of the job. */
  | { readonly kind: "no such check" }
  | { readonly kind: "no such job" };

/**
 * Keeps what a phone sent, once however often it comes. On a closed job, as when the desk asked for more or a phone
 * finds its signal late, it becomes a reading at once; on an open one when the job is closed.
 */
export async function keepAnswer(jobNumber: string, answer: SheetAnswer): Promise<KeptAnswer> {
  const body = JSON.stringify(answer);
  const hash = createHash("sha256").update(body).digest("hex");
  return await inTransaction(async (tx): Promise<KeptAnswer> => {
    const job = await lockedJob(tx, jobNumber);
    if (job === undefined) return { kind: "no such job" };
    if (isOwnKey(answer.check) && !ownChecksOf((await loadSheetRun(tx, job))?.sheets ?? []).has(answer.check))
      return { kind: "no such check" };
    if (await isStoodFor(tx, job, answer.id)) return { kind: "here already" };
    const added = await tx.rows(sql`
      insert into sheet_answers (unit_id, job_id, answer_id, sequence, body, body_sha256, received_at)
      values (${job.unitId}, ${job.jobId}, ${answer.id}, ${answer.sequence}, ${body}::jsonb, ${hash}, now())
      on conflict do nothing returning answer_id`);
    if (added.length === 0) {
      const [known] = await tx.rows<{ hash: string }>(sql`
        select body_sha256 as hash from sheet_answers where unit_id = ${job.unitId} and job_id = ${job.jobId} and answer_id = ${answer.id}`);
      return { kind: known?.hash === hash ? "here already" : "other answer" };
    }
    if (job.state !== "closed") await withdraw(tx, job, answer.standsFor ?? []);
    else {
      await insertReadings(tx, job, [answer], undefined);
      await refreshUnclaimed(tx, [job.unitId]);
    }
    return { kind: "kept" };
  });
}

/** Whether a later answer stands for this one, which was slower on its way than the phone was patient. */
async function isStoodFor(tx: Transaction, { unitId, jobId }: LockedJob, id: string): Promise<boolean> {
  const [found] = await tx.rows(sql`
    select from sheet_answers where unit_id = ${unitId} and job_id = ${jobId} and body -> 'standsFor' ? ${id} limit 1`);
  return found !== undefined;
}

/** Tries of the same step of which the phone never heard. What became a reading of a closed job stays on record. */
async function withdraw(tx: Transaction, { unitId, jobId }: LockedJob, ids: readonly string[]): Promise<void> {
  if (ids.length === 0) return;
  await tx.execute(sql`
    delete from sheet_answers where unit_id = ${unitId} and job_id = ${jobId} and answer_id = any(${sql.param([...ids])}::text[])`);
}
