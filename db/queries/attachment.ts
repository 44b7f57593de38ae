import { and, eq } from "drizzle-orm";
import type { Reader } from "../database-types";
import { attachments, jobs } from "../schema/jobs";

/** One picture or paper of a job, bytes and all; undefined where the job has none of that id. */
export async function loadAttachment(db: Reader, jobNumber: string, attachmentId: string) {
  if (!/^\d{1,19}$/.test(attachmentId)) return undefined;
  const [row] = await db
    .select({ mediaType: attachments.mediaType, content: attachments.content, sha256: attachments.storedSha256 })
    .from(attachments)
    .innerJoin(jobs, and(eq(jobs.unitId, attachments.unitId), eq(jobs.jobId, attachments.jobId)))
    .where(and(eq(jobs.jobNumber, jobNumber), eq(attachments.attachmentId, attachmentId)))
    .limit(1);
  return row;
}
