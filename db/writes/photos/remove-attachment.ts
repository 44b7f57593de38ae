import { sql } from "drizzle-orm";
import { inTransaction } from "../../in-transaction";
import { refreshUnclaimed } from "../money/refresh-unclaimed";

export interface AttachmentPlace {
  readonly jobNumber: string;
  readonly id: string;
}

export type RemovedAttachment =
  | { readonly kind: "removed" }
  | { readonly kind: "not there" }
  /** What was sent stays whole: its files stay too. */
  | { readonly kind: "sent with a claim"; readonly claimNumber: string };

/** After this many days a photo that was taken off is gone for good. */
const keptDays = 30;

/** Takes a photo or paper off its job; `bringBack` undoes it. @throws RangeError where nobody is named */
export async function removeAttachment({ jobNumber, id }: AttachmentPlace, by: string): Promise<RemovedAttachment> {
  if (by.trim() === "") throw new RangeError("by: is blank");
  return await inTransaction(async (tx) => {
    const [found] = await tx.rows<{ unitId: string; jobId: string; hash: string }>(sql`
      select a.unit_id::text as "unitId", a.job_id::text as "jobId", a.stored_sha256 as hash
      from attachments a join jobs j using (unit_id, job_id)
      where j.job_number = ${jobNumber} and a.attachment_id = ${id} limit 1 for update`);
    if (found === undefined) return { kind: "not there" };
    const { unitId, jobId, hash } = found;
    const [sent] = await tx.rows<{ claimNumber: string }>(sql`
      select c.claim_number as "claimNumber" from claims c join claim_submissions s using (unit_id, claim_id)
      where c.unit_id = ${unitId} and c.job_id = ${jobId} and s.manifest @> ${JSON.stringify([{ sha256: hash }])}::jsonb limit 1`);
    if (sent !== undefined) return { kind: "sent with a claim", claimNumber: sent.claimNumber };
    await tx.execute(sql`
      insert into removed_attachments (unit_id, job_id, attachment_id, attachment, content, removed_at, removed_by)
      select unit_id, job_id, attachment_id, to_jsonb(a) - 'content', content, now(), ${by}
      from attachments a where unit_id = ${unitId} and job_id = ${jobId} and attachment_id = ${id}
      on conflict (unit_id, job_id, attachment_id) do update
        set attachment = excluded.attachment, content = excluded.content, removed_at = excluded.removed_at, removed_by = excluded.removed_by`);
    await tx.execute(
      sql`delete from attachments where unit_id = ${unitId} and job_id = ${jobId} and attachment_id = ${id}`,
    );
    await tx.execute(
      sql`delete from removed_attachments where removed_at < now() - make_interval(days => ${keptDays})`,
    );
    await refreshUnclaimed(tx, [unitId]);
    return { kind: "removed" };
  });
}

/** Puts a photo back as it was. False where it was not taken off, or too long ago, or its job is gone. */
export async function bringBack({ jobNumber, id }: AttachmentPlace): Promise<boolean> {
  return await inTransaction(async (tx) => {
    const back = await tx.rows<{ unitId: string }>(sql`
      with taken as (
        delete from removed_attachments r using jobs j
        where j.job_number = ${jobNumber} and r.unit_id = j.unit_id and r.job_id = j.job_id and r.attachment_id = ${id}
        returning r.attachment, r.content
      )
      insert into attachments (unit_id, job_id, attachment_id, subject, caption, media_type, width, height, taken_at, received_sha256, stored_sha256, stored_bytes, content, batch_id)
      select p.unit_id, p.job_id, p.attachment_id, p.subject, p.caption, p.media_type, p.width, p.height, p.taken_at, p.received_sha256, p.stored_sha256, p.stored_bytes, t.content, p.batch_id
      from taken t, jsonb_populate_record(null::attachments, t.attachment) p
      on conflict do nothing returning unit_id::text as "unitId"`);
    await refreshUnclaimed(
      tx,
      back.map(({ unitId }) => unitId),
    );
    return back.length > 0;
  });
}
