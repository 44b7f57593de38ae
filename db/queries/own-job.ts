import { sql } from "drizzle-orm";
import type { Reader } from "../database-types";

/**
 * Whether a technician may see a job: one that was done under their name, one that is theirs or nobody's to do, or one
 * that the desk asks them about.
 */
export async function loadWhetherOwnJob(
  db: Reader,
  { jobNumber, technician }: { readonly jobNumber: string; readonly technician: string | undefined },
): Promise<boolean> {
  const name = technician ?? null;
  const [row] = await db.rows<{ own: boolean }>(sql`
    select exists (select 1 from jobs where job_number = ${jobNumber} and technician = ${name})
      or exists (select 1 from open_jobs where job_number = ${jobNumber} and (technician is null or technician = ${name}))
      or exists (select 1 from technician_asks a join jobs j using (unit_id, job_id) where j.job_number = ${jobNumber} and a.technician = ${name}) as own`);
  return row?.own ?? false;
}
