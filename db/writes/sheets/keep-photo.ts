import { sql } from "drizzle-orm";
import type { PhotoSubject } from "@/lib/domain/job";
import { inTransaction } from "../../in-transaction";
import { addAttachment } from "../photos/add-attachment";
import { attachmentId } from "../photos/attachment-id";
import { instantTaken } from "../photos/instant-taken";
import { mostAttachments } from "../photos/photo-limits";
import type { KeptPhoto } from "../photos/photo-reading";

export interface NewSheetPhoto {
  readonly jobNumber: string;
  /** A UUID made on the phone. */
  readonly id: string;
  readonly check: string | undefined;
  readonly subject: PhotoSubject;
  readonly photo: KeptPhoto;
}

export type KeptSheetPhoto = { readonly kind: "kept" | "here already" | "no such job" | "job is full" };

/** Keeps a photo that a phone sent, once however often it comes; on a closed job it becomes an attachment at once. */
export async function keepPhoto({ jobNumber, id, check, subject, photo }: NewSheetPhoto): Promise<KeptSheetPhoto> {
  const attachment = attachmentId({ receivedSha256: photo.receivedSha256, jobNumber });
  const kept = await inTransaction(async (tx): Promise<KeptSheetPhoto | "closed"> => {
    const [job] = await tx.rows<{ unitId: string; jobId: string; closed: boolean; timeZone: string }>(sql`
      select unit_id::text as "unitId", job_id::text as "jobId", closed_at is not null as closed,
        coalesce((select time_zone from shop), 'UTC') as "timeZone"
      from open_jobs where job_number = ${jobNumber} for update of open_jobs`);
    if (job === undefined || job.closed) return "closed";
    const [count] = await tx.rows<{ photos: number; same: number }>(sql`
      select count(*)::integer as photos, count(*) filter (where photo_id = ${id} or attachment_id = ${attachment})::integer as same
      from sheet_photos where unit_id = ${job.unitId} and job_id = ${job.jobId}`);
    if ((count?.same ?? 0) > 0) return { kind: "here already" };
    if ((count?.photos ?? 0) >= mostAttachments) return { kind: "job is full" };
    await tx.execute(sql`
      insert into sheet_photos (unit_id, job_id, photo_id, attachment_id, check_key, subject, caption, width, height, taken_at, received_sha256, stored_sha256, received_at, content)
      values (${job.unitId}, ${job.jobId}, ${id}, ${attachment}, ${check ?? null}, ${subject}, '', ${photo.width}, ${photo.height},
        ${instantTaken(photo.taken, job.timeZone)}, ${photo.receivedSha256}, ${photo.storedSha256}, now(), ${photo.content})`);
    return { kind: "kept" };
  });
  if (kept !== "closed") return kept;
  const added = await addAttachment({ jobNumber, subject, caption: "", file: photo });
  return { kind: added.kind === "added" ? "kept" : added.kind };
}
