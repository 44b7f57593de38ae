import { createHash } from "node:crypto";
import { sql } from "drizzle-orm";
import { isOwnKey } from "@/lib/domain/own-check";
import { ownChecksOf } from "@/lib/sheets/sheet";
import type { SheetAnswer } from "@/lib/sheets/sheet-answer";
import { inTransaction } from "../../in-transaction";
import { loadSheetRun } from "../../queries/sheet-run";
import { refreshUnclaimed } from "../money/refresh-unclaimed";
import { insertReadings } from "./insert-readings";
import { lockedJob } from "./locked-job";

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
    const added = await tx.rows(sql`
      insert into sheet_answers (unit_id, job_id, answer_id, sequence, body, body_sha256, received_at)
      values (${job.unitId}, ${job.jobId}, ${answer.id}, ${answer.sequence}, ${body}::jsonb, ${hash}, now())
      on conflict do nothing returning answer_id`);
    if (added.length === 0) {
      const [known] = await tx.rows<{ hash: string }>(sql`
        select body_sha256 as hash from sheet_answers where unit_id = ${job.unitId} and job_id = ${job.jobId} and answer_id = ${answer.id}`);
      return { kind: known?.hash === hash ? "here already" : "other answer" };
    }
    if (job.state === "closed") {
      await insertReadings(tx, job, [answer], undefined);
      await refreshUnclaimed(tx, [job.unitId]);
    }
    return { kind: "kept" };
  });
}
