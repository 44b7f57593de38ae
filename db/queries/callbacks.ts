import { sql } from "drizzle-orm";
import type { Reader } from "../database-types";

/** Two jobs of which the later seems to return to the earlier, though its file does not say so. */
export interface SuggestedCallback {
  readonly jobNumber: string;
  readonly earlier: string;
  /** From the earlier completion to the later report. */
  readonly days: number;
}

/** Suggestions that concern a job, as the later of the two or the earlier. */
export async function loadCallbacksOfJob(db: Reader, jobNumber: string): Promise<readonly SuggestedCallback[]> {
  return await db.rows<Suggested>(sql`
    select j.job_number as "jobNumber", s.callback_of as earlier, s.days from suggested_callbacks s join jobs j using (unit_id, job_id)
    where s.unit_id = (select unit_id from jobs where job_number = ${jobNumber} limit 1) and ${jobNumber} in (j.job_number, s.callback_of) order by 1`);
}

/** Suggestions whose later job came with a load, and how many there are. */
export async function loadCallbacksOfBatch(db: Reader, batchId: number, limit: number) {
  const rows = await db.rows<Suggested & { total: number }>(sql`
    select j.job_number as "jobNumber", s.callback_of as earlier, s.days, count(*) over ()::integer as total
    from suggested_callbacks s join jobs j using (unit_id, job_id) where j.batch_id = ${batchId} order by j.job_number limit ${limit}`);
  return { total: rows[0]?.total ?? 0, rows: rows as readonly SuggestedCallback[] };
}

type Suggested = { jobNumber: string; earlier: string; days: number };
