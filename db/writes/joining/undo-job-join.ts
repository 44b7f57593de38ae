import { sql } from "drizzle-orm";
import { inTransaction } from "@/db/in-transaction";
import { refreshUnclaimed } from "../money/refresh-unclaimed";
import { refreshCounts } from "../refresh-counts";
import { run } from "../staging/run";
import { intakeLock } from "../store-import";
import { claimSent } from "./claim-sent";
import { moveJobs } from "./move-jobs";

export type UndoJoinResult =
  | { readonly kind: "undone" }
  /** Nobody joined it by hand, or a file has given its serial since. */
  | { readonly kind: "not joined by hand" }
  | { readonly kind: "claim sent" };

/** A job that a person joined to a unit goes back to its placeholder, with everything under it. */
export async function undoJobJoin(jobNumber: string): Promise<UndoJoinResult> {
  return await inTransaction(async (tx) => {
    await run(tx, `select pg_advisory_xact_lock(${intakeLock})`);
    const [join] = await tx.rows<{ jobId: string; from: string; to: string; models: number[]; sent: boolean }>(sql`
      select j.job_id::text as "jobId", j.unit_id::text as "from", o.from_unit_id::text as "to", array[u.model_id, p.model_id] as models,
        ${sql.raw(claimSent("j.unit_id", "j.job_id"))} as sent
      from jobs j join job_joins o on o.job_id = j.job_id and o.to_unit_id = j.unit_id and o.undone_at is null and o.batch_id is null
      join units u on u.unit_id = j.unit_id join units p on p.unit_id = o.from_unit_id and not p.identified
      where j.job_number = ${jobNumber}
        and not exists (select from job_joins x where x.job_id = j.job_id and x.undone_at is null and x.batch_id is not null)`);
    if (join === undefined) return { kind: "not joined by hand" };
    if (join.sent) return { kind: "claim sent" };
    await tx.execute(sql`
      create temporary table moving on commit drop as select ${join.jobId}::bigint as job_id, ${join.from}::bigint as from_unit, ${join.to}::bigint as to_unit`);
    await moveJobs(tx, "moving");
    await tx.execute(sql`
      update job_joins set undone_at = now() where job_id = ${join.jobId} and batch_id is null and undone_at is null`);
    await tx.execute(sql`
      update hand_edits set lifted_at = now() where table_name = 'jobs' and column_name = 'unit_id' and lifted_at is null
        and key = ${join.to} || chr(31) || ${join.jobId}`);
    await refreshCounts(tx, join.models);
    await refreshUnclaimed(tx, [join.from, join.to]);
    return { kind: "undone" };
  });
}
