import { type SQL, sql } from "drizzle-orm";
import type { JobRecord } from "@/lib/domain/job";
import type { Reader } from "../database-types";
import { attachments, partLines, readings } from "../schema/jobs";
import { attachmentOf, partLineOf, readingOf } from "./job-rows";
import { keyArray } from "./money-units";
import { loadPlainRows } from "./plain-rows";

export interface JobKey {
  readonly unitId: string;
  readonly jobId: string;
}

export type Under = Pick<JobRecord, "partLines" | "readings" | "attachments">;

/** What lies under many jobs at once, attachments without their bytes; the function handed back picks what is one's. */
export async function loadUnderJobs(db: Reader, of: readonly JobKey[]): Promise<(job: JobKey) => Under> {
  const parts = byJob(await loadPlainRows(db, partLines, sql`${among(of)} order by t.line`), partLineOf);
  const taken = byJob(await loadPlainRows(db, readings, sql`${among(of)} order by t.number`), readingOf);
  const inOrder = sql`${among(of)} order by t.subject, t.attachment_id`;
  const papers = byJob(await loadPlainRows(db, attachments, inOrder, { without: ["content"] }), attachmentOf);
  return (job) => ({ partLines: parts(job), readings: taken(job), attachments: papers(job) });
}

/** A join that keeps rows of these jobs only. */
export function among(of: readonly JobKey[]): SQL {
  const units = keyArray(of.map((job) => job.unitId));
  const jobs = keyArray(of.map((job) => job.jobId));
  return sql`join unnest(${units}, ${jobs}) as k (unit_id, job_id) using (unit_id, job_id)`;
}

function byJob<Row extends JobKey, Found>(rows: readonly Row[], found: (row: Row) => Found) {
  const groups = new Map<string, Found[]>();
  for (const row of rows) {
    const key = keyOf(row);
    const group = groups.get(key);
    if (group === undefined) groups.set(key, [found(row)]);
    else group.push(found(row));
  }
  const none: readonly Found[] = [];
  return (job: JobKey): readonly Found[] => groups.get(keyOf(job)) ?? none;
}

export function keyOf({ unitId, jobId }: JobKey): string {
  return `${unitId} ${jobId}`;
}
