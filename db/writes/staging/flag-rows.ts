import type { Transaction } from "@/db/database-types";
import { run } from "./run";
import type { Staged, StagedKind } from "./staged-kind";

/** Adds a problem to each row that `select` names by `row, "column", value, problem, fix`. */
export async function flagRows(tx: Transaction, { table }: Staged, select: string): Promise<void> {
  await run(
    tx,
    `update ${table} s set problems = coalesce(s.problems, '[]'::jsonb) || p.found
     from (select row, jsonb_agg(jsonb_build_object('column', "column", 'value', coalesce(value, ''), 'problem', problem, 'fix', fix)) as found
           from (${select}) as found(row, "column", value, problem, fix) group by row) p
     where p.row = s.row`,
  );
}

/** A file may repeat a row word for word; two rows of one name that differ cannot both be right. */
export async function flagRepeats(tx: Transaction, staged: Staged, { target, named }: StagedKind): Promise<void> {
  const key = target.key.join(", ");
  await flagRows(
    tx,
    staged,
    `select s.row, '${named.column}', s.cells ->> '${named.column}',
            'names the same ${named.noun} as row ' || f.row || ', with other values', 'Keep the row that is right.'
     from ${staged.table} s
     join (select distinct on (${key}) ${key}, row, cells from ${staged.table}
           where readable and (${key}) in (select ${key} from ${staged.table} where readable group by ${key} having count(*) > 1)
           order by ${key}, row) f using (${key})
     where s.readable and s.row <> f.row and s.cells <> f.cells`,
  );
}
