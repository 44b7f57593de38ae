import type { Transaction } from "@/db/database-types";
import { fillCells } from "../bulk/fill-cells";
import { rowsOf, run } from "./run";
import type { Staged, StagedKind } from "./staged-kind";

/** Adds a problem to each row that `select` names by `row, "column", value, problem, fix`. */
export async function flagRows(tx: Transaction, { table, readCells }: Staged, select: string): Promise<void> {
  if (readCells !== undefined && !(await findsAny(tx, select))) return;
  await run(
    tx,
    `update ${table} s set problems = coalesce(s.problems, '[]'::jsonb) || p.found
     from (select row, jsonb_agg(jsonb_build_object('column', "column", 'value', coalesce(value, ''), 'problem', problem, 'fix', fix)) as found
           from (${select}) as found(row, "column", value, problem, fix) group by row) p
     where p.row = s.row`,
  );
}

/** Asked by itself, and for all, the database plans for all rows and shares the work between processes; a large file is mostly clean. */
async function findsAny(tx: Transaction, select: string): Promise<boolean> {
  const [found] = await rowsOf<{ any: boolean }>(tx, `select count(*) > 0 as any from (${select}) as found`);
  return found?.any === true;
}

/**
 * A file may repeat a row word for word; rows of one name that differ cannot all be right, and nobody but a person can
 * tell which is. Each names another one: the first, or, itself like the first, the first that differs.
 */
export async function flagRepeats(tx: Transaction, staged: Staged, { target, named }: StagedKind): Promise<void> {
  const key = target.key.join(", ");
  const { table } = staged;
  const repeated = `readable and (${key}) in (select ${key} from ${table} where readable group by ${key} having count(*) > 1)`;
  if (!(await fillCells(tx, staged, repeated))) return;
  await flagRows(
    tx,
    staged,
    `select s.row, '${named.column}', s.cells ->> '${named.column}',
       'names the same ${named.noun} as row ' || case when s.cells <> s.first_cells then s.first_row else s.other_row end || ', with other values', 'Keep the row that is right.'
     from (select f.*, min(case when f.cells <> f.first_cells then f.row end) over (partition by ${key}) as other_row
           from (select ${key}, row, cells, first_value(row) over named as first_row, first_value(cells) over named as first_cells
                 from ${table} where readable and (${key}) in (select ${key} from ${table} where readable group by ${key} having count(*) > 1)
                 window named as (partition by ${key} order by row)) f) s
     where s.other_row is not null`,
  );
}
