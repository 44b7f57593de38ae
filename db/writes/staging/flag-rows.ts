import type { Transaction } from "@/db/database-types";
import { fillCells } from "../bulk/fill-cells";
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
    `with repeated as (select * from ${table} where ${repeated}),
       first as (select distinct on (${key}) ${key}, row, cells from repeated order by ${key}, row),
       other as (select distinct on (${key}) ${key}, r.row from repeated r join first f using (${key}) where r.cells <> f.cells order by ${key}, r.row)
     select s.row, '${named.column}', s.cells ->> '${named.column}',
       'names the same ${named.noun} as row ' || case when s.cells <> f.cells then f.row else o.row end || ', with other values', 'Keep the row that is right.'
     from repeated s join first f using (${key}) join other o using (${key})`,
  );
}
