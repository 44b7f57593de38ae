// What part lines, readings and photos share: they hang on a job that is on file.
import type { Transaction } from "@/db/database-types";
import { noteUsedRows } from "../bulk/made-rows";
import { isFirst, rewriteStaged } from "../bulk/rewrite-staged";
import { flagRows } from "../staging/flag-rows";
import { run } from "../staging/run";
import type { Staged } from "../staging/staged-kind";

export const jobDerived = ["unit_id bigint", "job_id bigint", "kind_of_model text", "joins_from bigint"] as const;

/** Where the job of a row moves to its real unit with this file, the row is still stored under the placeholder. */
export const storedUnderJob = { unit_id: "coalesce(s.joins_from, s.unit_id)" } as const;

/** Finds the job of each row: one that comes with the same file, or else one on file. */
export async function resolveJobOfRows(tx: Transaction, { table, beside }: Staged): Promise<void> {
  const jobs = beside?.get("jobs");
  if (jobs !== undefined)
    await run(
      tx,
      `update ${table} s set unit_id = j.unit_id, job_id = j.job_id, kind_of_model = j.kind_of_model, joins_from = j.joins_from
       from (select distinct on (job_number) * from ${jobs} where readable order by job_number, row) j
       where s.readable and j.job_number = s.job_number`,
    );
  await run(
    tx,
    `update ${table} s set unit_id = j.unit_id, job_id = j.job_id, kind_of_model = m.product_type
     from jobs j join units u using (unit_id) join models m using (model_id)
     where s.readable and s.job_id is null and j.job_number = s.job_number`,
  );
}

/** The same where no such row is on file yet: then each is new, as far as this can tell. @returns false where it is not so */
export async function resolveFirstRows(tx: Transaction, staged: Staged, target: string): Promise<boolean> {
  if (!(await isFirst(tx, staged, target))) return false;
  const jobs = staged.beside?.get("jobs");
  const [of, byFile] =
    jobs === undefined
      ? [(stored: string) => stored, ""]
      : [
          (stored: string, own: string) => `case when f.job_id is null then ${stored} else f.${own} end`,
          `left join (select distinct on (job_number) * from ${jobs} where readable order by job_number, row) f on s.readable and f.job_number = s.job_number`,
        ];
  return await rewriteStaged(tx, staged.table, {
    set: {
      unit_id: of("j.unit_id", "unit_id"),
      job_id: of("j.job_id", "job_id"),
      kind_of_model: of("m.product_type", "kind_of_model"),
      ...(jobs === undefined ? {} : { joins_from: "f.joins_from" }),
      fate: "case when s.readable then 'new' end",
    },
    joins: `${byFile} left join jobs j on s.readable and j.job_number = s.job_number
      left join units u on u.unit_id = j.unit_id left join models m on m.model_id = u.model_id`,
  });
}

export async function checkJobOfRows(tx: Transaction, staged: Staged): Promise<void> {
  await flagRows(
    tx,
    staged,
    `select s.row, 'job_number', s.job_number, 'is not the number of a job on file', 'Correct it, or load the job first.'
     from ${staged.table} s where s.readable and s.job_id is null`,
  );
}

/** Notes the jobs on which the rows hang. */
export async function keepJobs(tx: Transaction, { table }: Staged, batchId: number): Promise<void> {
  for (const [used, key] of [
    ["jobs", ["unit_id", "job_id"]],
    ["units", ["unit_id"]],
  ] as const) {
    const columns = key.join(", ");
    const from = `select ${columns}, min(row) as row from ${table} where fate is not null group by ${columns}`;
    await noteUsedRows(tx, { table: used, key, from, batchId });
  }
}
