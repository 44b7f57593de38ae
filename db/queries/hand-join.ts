import { sql } from "drizzle-orm";
import type { Reader } from "../database-types";

/** Who said which unit a job was on, where it had come without a serial. */
export interface HandJoin {
  readonly by: string;
  readonly reason: string;
  readonly at: string;
}

/** The joining of a job that a person can undo: no file has given its serial since. */
export async function loadHandJoin(db: Reader, jobNumber: string): Promise<HandJoin | undefined> {
  const [join] = await db.rows<{ by: string; reason: string; at: string }>(sql`
    select o.by, o.reason, o.at::text as at from jobs j join job_joins o on o.job_id = j.job_id and o.to_unit_id = j.unit_id
    where j.job_number = ${jobNumber} and o.undone_at is null and o.batch_id is null
      and not exists (select from job_joins x where x.job_id = j.job_id and x.undone_at is null and x.batch_id is not null)`);
  return join;
}
