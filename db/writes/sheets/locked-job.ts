import { sql } from "drizzle-orm";
import type { Transaction } from "../../database-types";

export interface LockedJob {
  readonly unitId: string;
  readonly jobId: string;
  readonly modelId: number;
  /** "open" still, "closed" here or by a file. */
  readonly state: "open" | "closed";
}

/** The job by its number, held until the end of the transaction; undefined where neither an open nor a closed one has it. */
export async function lockedJob(tx: Transaction, jobNumber: string): Promise<LockedJob | undefined> {
  const [open] = await tx.rows<{ unitId: string; jobId: string; modelId: number; closed: boolean }>(sql`
    select o.unit_id::text as "unitId", o.job_id::text as "jobId", u.model_id as "modelId", o.closed_at is not null as closed
    from open_jobs o join units u using (unit_id) where o.job_number = ${jobNumber} for update of o`);
  if (open !== undefined && !open.closed) {
    const { closed: _, ...job } = open;
    return { ...job, state: "open" };
  }
  const [job] = await tx.rows<{ unitId: string; jobId: string; modelId: number }>(sql`
    select j.unit_id::text as "unitId", j.job_id::text as "jobId", u.model_id as "modelId"
    from jobs j join units u using (unit_id) where j.job_number = ${jobNumber} for update of j`);
  return job === undefined ? undefined : { ...job, state: "closed" };
}
