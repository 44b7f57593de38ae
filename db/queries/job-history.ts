import { sql } from "drizzle-orm";
import type { Reader } from "../database-types";
import { type EditDifference, loadEditDifferences } from "./edit-differences";

/** One value that a field had, and who gave it. The latest comes first. */
export interface FieldHistory {
  readonly column: string;
  readonly before: string | null;
  readonly after: string | null;
  readonly at: string;
  readonly by:
    | { readonly kind: "file"; readonly batchId: number; readonly fileName: string }
    | { readonly kind: "person"; readonly name: string; readonly reason: string };
}

export interface JobHistory {
  /** The load that brought the job; undefined where that was taken back, or it came before loads were kept. */
  readonly madeBy: { readonly batchId: number; readonly fileName: string; readonly at: string } | undefined;
  readonly fields: readonly FieldHistory[];
  readonly differences: readonly EditDifference[];
}

/** How a job came to be as it is: each field's values with the file or the person that gave them. */
export async function loadJobHistory(db: Reader, jobNumber: string): Promise<JobHistory> {
  const job = sql`(select j.*, j.unit_id::text || chr(31) || j.job_id::text as key from jobs j where j.job_number = ${jobNumber})`;
  const [made] = await db.rows<{ batchId: number; fileName: string; at: string }>(sql`
    select b.batch_id::integer as "batchId", b.file_name as "fileName", b.added_at::text as at
    from batches b where b.batch_id = coalesce(
      (select min(c.batch_id) from batch_changes c join ${job} j using (key) where c.table_name = 'jobs' and c.what = 'made'),
      (select (c.before ->> 'batch_id')::bigint from batch_changes c join ${job} j using (key) where c.table_name = 'jobs' and c.what = 'changed' order by c.batch_id limit 1),
      (select j.batch_id from ${job} j))`);
  return {
    madeBy: made,
    fields: [...(await changesByFiles(db, job)), ...(await changesByHand(db, job))].toSorted((a, b) =>
      a.at < b.at ? 1 : -1,
    ),
    differences: await loadEditDifferences(db, jobNumber),
  };
}

type Job = ReturnType<typeof sql>;

/** Each load's image of the row before it, against the image before the next load, or the row as it is. */
async function changesByFiles(db: Reader, job: Job): Promise<readonly FieldHistory[]> {
  const rows = await db.rows<{
    column: string;
    before: string | null;
    after: string | null;
    at: string;
    batchId: number;
    fileName: string;
  }>(sql`
    with images as (
      select c.batch_id, c.before, coalesce(lead(c.before) over (order by c.batch_id), to_jsonb(j)) as after
      from batch_changes c join ${job} j using (key) where c.table_name = 'jobs' and c.what = 'changed')
    select f.key as "column", f.value #>> '{}' as before, i.after -> f.key #>> '{}' as after, b.added_at::text as at, b.batch_id::integer as "batchId", b.file_name as "fileName"
    from images i join batches b on b.batch_id = i.batch_id cross join lateral jsonb_each(i.before) f
    where f.key not in ('batch_id', 'unit_id') and f.value is distinct from i.after -> f.key
      and not exists (select from hand_edits e join ${job} j on j.key = e.key where e.table_name = 'jobs' and e.column_name = f.key and e.value = i.after -> f.key and e.at > b.added_at)`);
  return rows.map(({ batchId, fileName, ...field }) => ({ ...field, by: { kind: "file", batchId, fileName } }));
}

async function changesByHand(db: Reader, job: Job): Promise<readonly FieldHistory[]> {
  const rows = await db.rows<{
    column: string;
    before: string | null;
    after: string | null;
    at: string;
    name: string;
    reason: string;
  }>(sql`
    select e.column_name as "column", e.value_before #>> '{}' as before, e.value #>> '{}' as after, e.at::text as at, e.by as name, e.reason
    from hand_edits e join ${job} j on j.key = e.key where e.table_name = 'jobs' order by e.edit_id`);
  return rows.map(({ name, reason, ...field }) => ({ ...field, by: { kind: "person", name, reason } }));
}
