import { sql } from "drizzle-orm";
import type { Transaction } from "../database-types";
import { inTransaction } from "../in-transaction";
import { refreshUnclaimed } from "./money/refresh-unclaimed";
import { markPartsOfJob } from "./parts/mark-parts";
import { settleOutlooks } from "./parts/settle-outlooks";
import { refreshCountsOfUnit } from "./refresh-counts";
import { run } from "./staging/run";
import { intakeLock } from "./store-import";
import { takenTables } from "./taking-back/tables";

export interface JobEdit {
  readonly jobNumber: string;
  /** As stored, for example labour_cents or correction. */
  readonly column: string;
  /** Null clears the field. */
  readonly value: string | number | null;
  readonly by: string;
  readonly reason: string;
}

export type EditResult =
  | { readonly kind: "edited"; readonly editId: number }
  | { readonly kind: "no such job" }
  /** It was so already. */
  | { readonly kind: "same" };

/** Columns of a job that a person may set: what a file may change. */
const editable = new Set(takenTables.find(({ name }) => name === "jobs")?.restored);

/**
 * A person sets one field of a job. From then on files do not change it, until the edit is lifted.
 * @throws RangeError for a column that cannot be edited; the database's error for a value that contradicts the others
 */
export async function editJob({ jobNumber, column, value, by, reason }: JobEdit): Promise<EditResult> {
  if (!editable.has(column)) throw new RangeError(`column: ${column} of a job cannot be edited`);
  if (by.trim() === "") throw new RangeError("by: is blank");
  const result = await inTransaction<EditResult>(async (tx) => {
    await run(tx, `select pg_advisory_xact_lock(${intakeLock})`);
    const job = await findJob(tx, jobNumber, column);
    if (job === undefined) return { kind: "no such job" };
    const name = sql.identifier(column);
    const changed = await tx.rows(sql`
      update jobs t set ${name} = v.${name} from jsonb_populate_record(null::jobs, ${JSON.stringify({ [column]: value })}::jsonb) v
      where t.unit_id = ${job.unitId} and t.job_id = ${job.jobId} and t.${name} is distinct from v.${name} returning t.job_id`);
    if (changed.length === 0) return { kind: "same" };
    await tx.execute(
      sql`update hand_edits set lifted_at = now() where table_name = 'jobs' and key = ${job.key} and column_name = ${column} and lifted_at is null`,
    );
    const [edit] = await tx.rows<{ editId: number }>(sql`
      insert into hand_edits (table_name, key, column_name, value_before, value, at, by, reason)
      select 'jobs', ${job.key}, ${column}, ${JSON.stringify(job.before)}::jsonb, to_jsonb(t) -> ${column}, now(), ${by}, ${reason}
      from jobs t where t.unit_id = ${job.unitId} and t.job_id = ${job.jobId} returning edit_id::integer as "editId"`);
    if (edit === undefined) throw new Error("The edit was stored without a number.");
    await refreshCountsOfUnit(tx, job.unitId);
    await refreshUnclaimed(tx, [job.unitId]);
    await markPartsOfJob(tx, job.unitId, job.jobId);
    return { kind: "edited", editId: edit.editId };
  });
  if (result.kind === "edited") await settleOutlooks();
  return result;
}

/**
 * Lifts an edit: the field takes what the latest file said otherwise, or else what it was before the edit, and files
 * may change it again. Who did so stays on record. False where there is no such edit that holds.
 * @throws the database's error where that value contradicts the others
 */
export async function liftJobEdit({ editId, by }: { readonly editId: number; readonly by: string }): Promise<boolean> {
  const lifted = await inTransaction(async (tx) => {
    await run(tx, `select pg_advisory_xact_lock(${intakeLock})`);
    const [edit] = await tx.rows<{ key: string; column: string; value: unknown }>(sql`
      update hand_edits e set lifted_at = now() where e.edit_id = ${editId} and e.table_name = 'jobs' and e.lifted_at is null and e.column_name <> 'unit_id'
      returning e.key, e.column_name as "column",
        (select f.value from (
           (select d.file_value as value, d.batch_id from edit_differences d join batches b using (batch_id) where d.edit_id = e.edit_id and b.state = 'added' order by d.batch_id desc limit 1)
           union all select e.value_before, 0) f order by f.batch_id desc limit 1) as value`);
    if (edit === undefined) return false;
    await tx.execute(sql`
      insert into hand_edits (table_name, key, column_name, value_before, value, at, by, reason, lifted_at)
      select table_name, key, column_name, value, ${JSON.stringify(edit.value)}::jsonb, now(), ${by}, 'Taken from the file; files may change it again.', now() from hand_edits where edit_id = ${editId}`);
    const name = sql.identifier(edit.column);
    const [unitId = "", jobId = ""] = edit.key.split("\u001f");
    await tx.execute(sql`
      update jobs t set ${name} = v.${name}
      from jsonb_populate_record(null::jobs, ${JSON.stringify({ [edit.column]: edit.value })}::jsonb) v
      where t.unit_id = ${unitId}::bigint and t.job_id = ${jobId}::bigint`);
    await refreshCountsOfUnit(tx, unitId);
    await refreshUnclaimed(tx, [unitId]);
    await markPartsOfJob(tx, unitId, jobId);
    return true;
  });
  if (lifted) await settleOutlooks();
  return lifted;
}

async function findJob(tx: Transaction, jobNumber: string, column: string) {
  const [job] = await tx.rows<{ unitId: string; jobId: string; key: string; before: unknown }>(sql`
    select j.unit_id::text as "unitId", j.job_id::text as "jobId",
      j.unit_id::text || chr(31) || j.job_id::text as key, to_jsonb(j) -> ${column} as before
    from jobs j join units u using (unit_id) where j.job_number = ${jobNumber}`);
  return job;
}
