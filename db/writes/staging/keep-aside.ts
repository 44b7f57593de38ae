import type { Transaction } from "@/db/database-types";
import { fillCells } from "../bulk/fill-cells";
import { rowTable } from "./load-report";
import { run } from "./run";
import type { StagedFile, StagedPart } from "./staged-file";

/** Stores the rows that did not go in, of which there are so many, and what is to be told of those that did. */
export async function keepAside(tx: Transaction, file: StagedFile, batchId: number, aside: number): Promise<void> {
  if (aside > 0) await keepRows(tx, file, batchId);
  await keepNotes(tx, file, batchId);
}

async function keepRows(tx: Transaction, file: StagedFile, batchId: number): Promise<void> {
  const table = rowTable(file);
  if (file.rows === undefined) {
    for (const { staged } of file.parts) await fillCells(tx, staged, "problems is not null");
    await run(
      tx,
      `insert into held_rows (batch_id, row, cells, problems) select ${batchId}, row, cells, problems from ${table} where problems is not null`,
    );
  } else {
    await file.rows.fill(tx, "r.fate in ('held', 'refused')");
    await run(
      tx,
      `insert into held_rows (batch_id, row, cells, source, problems, state, reason)
       select ${batchId}, row, cells, source, coalesce(problems, '[]'::jsonb), case when reason is null then 'held' else 'refused' end, reason
       from ${table} where fate in ('held', 'refused')`,
    );
  }
}

/** Stores notes of cells, and where the file says otherwise than fields that were edited here. */
export async function keepNotes(tx: Transaction, file: StagedFile, batchId: number): Promise<void> {
  await run(
    tx,
    `insert into edit_differences (batch_id, row, edit_id, file_value) select distinct on (row, edit_id) ${batchId}, row, edit_id, file_value from kept_edits`,
  );
  await keepCellNotes(tx, file, batchId);
}

/** What follows from the matching alone can be told anew from the raw row, and is not kept cell by cell. */
async function keepCellNotes(tx: Transaction, { parts, rows }: StagedFile, batchId: number): Promise<void> {
  if (rows === undefined) return;
  const keyed = (name: "job_id" | "unit_id") =>
    parts.find(({ kind }) => kind.derived.some((column) => column.startsWith(`${name} `)));
  const [job, unit] = [keyed("job_id"), keyed("unit_id")];
  const join = (alias: string, part: StagedPart | undefined) =>
    part === undefined
      ? ""
      : `left join ${part.staged.table} ${alias} on ${alias}.row = r.row and ${alias}.fate is not null`;
  await run(
    tx,
    `insert into cell_notes (batch_id, row, place, source, "column", raw, taken, note, job_id, unit_id)
     select ${batchId}, r.row, n.place, n.note ->> 'source', n.note ->> 'column', n.note ->> 'raw', n.note ->> 'taken', n.note ->> 'note',
       ${job === undefined ? "null::bigint" : "j.job_id"}, ${unit === undefined ? "null::bigint" : "u.unit_id"}
     from ${rows.table} r ${join("j", job)} ${join("u", unit)}
     cross join lateral jsonb_array_elements(r.notes) with ordinality as n(note, place)
     where r.notes is not null and coalesce(n.note ->> 'ordinary', 'false') <> 'true'`,
  );
}
