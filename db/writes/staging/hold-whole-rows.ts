import { sql } from "drizzle-orm";
import type { Transaction } from "@/db/database-types";
import type { FileKind } from "@/lib/intake/file-kinds";
import { flagRows } from "./flag-rows";
import { rowsOf, run } from "./run";
import type { StagedFile, StagedPart } from "./staged-file";
import type { StagedRows } from "./staged-kind";

/** A row of somebody's own file is held whole: where one of its records has a problem, none of them goes in. */
export async function holdWholeRows(tx: Transaction, { kind: main, parts, rows }: StagedFile): Promise<void> {
  if (rows === undefined) return;
  do {
    for (const part of parts) await gatherProblems(tx, part, rows, main);
    for (const { staged } of parts)
      await run(
        tx,
        `update ${staged.table} s set readable = false from ${rows.table} r where r.row = s.row and r.problems is not null and s.readable`,
      );
  } while (await flagOrphans(tx, parts));
}

/** Problems move to the row, told by the column and cell of the file itself where it has one. */
async function gatherProblems(
  tx: Transaction,
  { staged, kind }: StagedPart,
  rows: StagedRows,
  main: FileKind,
): Promise<void> {
  const [found] = await rowsOf<{ any: boolean }>(
    tx,
    `select exists (select from ${staged.table} where problems is not null) as any`,
  );
  if (found?.any !== true) return;
  await rows.fill(tx, `exists (select from ${staged.table} s where s.row = r.row and s.problems is not null)`);
  const prefix = kind.kind === main ? "" : `${kind.kind}.`;
  await tx.execute(sql`
    update ${sql.raw(rows.table)} r set problems = coalesce(r.problems, '[]'::jsonb) || p.found
    from (select s.row, jsonb_agg(case when h.header is null and p.problem ->> 'column' = '' then p.problem
            when h.header is null then p.problem || jsonb_build_object('column', ${prefix}::text || (p.problem ->> 'column'))
            else p.problem || jsonb_build_object('column', h.header, 'value', left(coalesce(o.cells ->> h.header, ''), 120)) end) as found
          from ${sql.raw(staged.table)} s join ${sql.raw(rows.table)} o using (row)
          cross join lateral jsonb_array_elements(s.problems) as p(problem)
          cross join lateral (select ${JSON.stringify(rows.headers)}::jsonb ->> (${`${kind.kind}.`}::text || (p.problem ->> 'column')) as header) h
          group by s.row) p
    where r.row = p.row`);
  await run(tx, `update ${staged.table} set problems = null, readable = false where problems is not null`);
}

/** Rows whose job was to come with this file, from a row that is held. True where there were any. */
async function flagOrphans(tx: Transaction, parts: readonly StagedPart[]): Promise<boolean> {
  let any = false;
  for (const { staged, kind } of parts) {
    const jobs = staged.beside?.get("jobs");
    if (kind.kind === "jobs" || jobs === undefined || !kind.derived.includes("job_id bigint")) continue;
    const orphans = `from ${staged.table} s where s.readable
      and not exists (select from ${jobs} j where j.readable and j.job_number = s.job_number) and not exists (select from jobs j where j.job_number = s.job_number)`;
    const [found] = await rowsOf<{ any: boolean }>(tx, `select count(*) > 0 as any from (select ${orphans}) as found`); // asked for one only, it would look for each in turn
    if (found?.any !== true) continue;
    any = true;
    await flagRows(
      tx,
      staged,
      `select s.row, 'job_number', s.job_number, 'is the number of a job whose rows in this file are held', 'Correct those rows first.' ${orphans}`,
    );
  }
  return any;
}
