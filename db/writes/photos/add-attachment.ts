import { sql } from "drizzle-orm";
import type { PhotoSubject } from "@/lib/domain/job";
import type { Transaction } from "../../database-types";
import { inTransaction } from "../../in-transaction";
import { refreshUnclaimed } from "../money/refresh-unclaimed";
import { attachmentId } from "./attachment-id";
import { instantTaken } from "./instant-taken";
import { longestCaption, mostAttachments } from "./photo-limits";
import type { KeptPhoto } from "./photo-reading";
import type { KeptPaper } from "./read-paper";

export interface NewAttachment {
  readonly jobNumber: string;
  readonly subject: PhotoSubject;
  readonly caption: string;
  readonly file: KeptPhoto | KeptPaper;
}

export type AddedAttachment =
  | { readonly kind: "added"; readonly id: string }
  /** The same bytes are on this job already, under what they were said to show then. */
  | { readonly kind: "here already"; readonly id: string; readonly subject: PhotoSubject }
  | { readonly kind: "no such job" }
  | { readonly kind: "job is full" };

/** One photo or paper more on a job. The same file twice is one. @throws RangeError for a caption longer than a form lets through */
export async function addAttachment({ jobNumber, subject, caption, file }: NewAttachment): Promise<AddedAttachment> {
  if (caption.length > longestCaption) throw new RangeError(`caption: at most ${longestCaption} characters`);
  const id = attachmentId({ receivedSha256: file.receivedSha256, jobNumber });
  const kept = keptOf(file);
  return await inTransaction(async (tx) => {
    const job = await lockJob(tx, jobNumber);
    if (job === undefined) return { kind: "no such job" };
    const [known] = await tx.rows<{ subject: PhotoSubject }>(
      sql`select subject from attachments where unit_id = ${job.unitId} and job_id = ${job.jobId} and attachment_id = ${id}`,
    );
    if (known !== undefined) return { kind: "here already", id, subject: known.subject };
    if (job.attachments >= mostAttachments) return { kind: "job is full" };
    const takenAt = instantTaken(kept.taken, job.timeZone);
    await tx.execute(sql`
      insert into attachments (unit_id, job_id, attachment_id, subject, caption, media_type, width, height, taken_at, received_sha256, stored_sha256, stored_bytes, content)
      values (${job.unitId}, ${job.jobId}, ${id}, ${subject}, ${caption}, ${kept.mediaType}, ${kept.width}, ${kept.height}, ${takenAt}, ${file.receivedSha256}, ${kept.storedSha256}, ${file.content.length}, ${file.content})`);
    await tx.execute(
      sql`delete from removed_attachments where unit_id = ${job.unitId} and job_id = ${job.jobId} and attachment_id = ${id}`,
    );
    await refreshUnclaimed(tx, [job.unitId]);
    return { kind: "added", id };
  });
}

interface JobPlace {
  readonly unitId: string;
  readonly jobId: string;
  readonly timeZone: string;
  readonly attachments: number;
}

/** Held until the end, so that two photos sent at once are counted one after the other. */
async function lockJob(tx: Transaction, jobNumber: string): Promise<JobPlace | undefined> {
  const [job] = await tx.rows<{ unitId: string; jobId: string; timeZone: string }>(sql`
    select j.unit_id::text as "unitId", j.job_id::text as "jobId", coalesce((select time_zone from shop), 'UTC') as "timeZone"
    from jobs j where j.job_number = ${jobNumber} limit 1 for update of j`);
  if (job === undefined) return undefined;
  const [count] = await tx.rows<{ attachments: number }>(
    sql`select count(*)::integer as attachments from attachments where unit_id = ${job.unitId} and job_id = ${job.jobId}`,
  );
  return { ...job, attachments: count?.attachments ?? 0 };
}

function keptOf(file: KeptPhoto | KeptPaper) {
  if ("width" in file) {
    const { width, height, storedSha256, taken } = file;
    return { mediaType: "image/jpeg", width, height, storedSha256, taken } as const;
  }
  const none = { width: null, height: null, taken: undefined };
  return { mediaType: "application/pdf", storedSha256: file.receivedSha256, ...none } as const;
}
