import { sql } from "drizzle-orm";
import type { Reader } from "../database-types";

/** Where a file says otherwise than a field that was edited here, and nobody has said yet that the edit stands against that. */
export interface EditDifference {
  readonly editId: number;
  readonly column: string;
  readonly editedAt: string;
  readonly by: string;
  /** What was set here, and what the file says. */
  readonly value: string | null;
  readonly fileValue: string | null;
  readonly batchId: number;
  readonly fileName: string;
}

/** The differences of a job that a person has still to settle, the latest file first. */
export async function loadEditDifferences(db: Reader, jobNumber: string): Promise<readonly EditDifference[]> {
  return await db.rows<EditDifference & Record<string, unknown>>(sql`
      select e.edit_id::integer as "editId", e.column_name as "column", e.at::text as "editedAt", e.by, e.value #>> '{}' as value, d.file_value #>> '{}' as "fileValue",
        b.batch_id::integer as "batchId", b.file_name as "fileName"
      from hand_edits e join (select unit_id::text || chr(31) || job_id::text as key from jobs where job_number = ${jobNumber}) j on j.key = e.key join edit_differences d on d.edit_id = e.edit_id join batches b on b.batch_id = d.batch_id
      where e.table_name = 'jobs' and e.lifted_at is null and b.state = 'added' and not exists (
        select from hand_edits p join edit_differences seen on seen.edit_id = p.edit_id
        where p.table_name = 'jobs' and p.key = e.key and p.column_name = e.column_name and p.lifted_at is not null and p.value = e.value and seen.file_value is not distinct from d.file_value)
      order by b.batch_id desc`);
}
