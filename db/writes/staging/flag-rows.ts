import type { Transaction } from "@/db/database-types";
import { nameColumn } from "./name-column";
import { rowsOf, run } from "./run";
import type { Staged, StagedKind } from "./staged-kind";

/** Adds a problem to each row that `select` names by `row, "column", value, problem, fix`. */
export async function flagRows(tx: Transaction, { table, bare }: Staged, select: string): Promise<void> {
  if (bare === true && !(await findsAny(tx, select))) return;
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
 * A file may repeat a row; rows of one name that say different things cannot all be right, and nobody but a person can
 * tell which is. Each names another one: the first, or, itself like the first, the first that differs.
 */
export async function flagRepeats(tx: Transaction, staged: Staged, kind: StagedKind): Promise<void> {
  const { table } = staged;
  const { target, named, columns } = kind;
  const key = target.key.join(", ");
  const differs = columns.map(({ name }) => `${name} is distinct from first_value(${name}) over named`).join(" or ");
  await flagRows(
    tx,
    staged,
    `select f.row, '${named.column}', f.name, 'names the same ${named.noun} as row ' || case when f.differs then f.first_row else f.other_row end || ', with other values', 'Keep the row that is right.'
     from (select e.*, min(case when e.differs then e.row end) over (partition by ${key}) as other_row
           from (select ${key}, row, ${nameColumn(kind)}::text as name, first_value(row) over named as first_row, ${differs} as differs
                 from ${table} where readable and (${key}) in (select ${key} from ${table} where readable group by ${key} having count(*) > 1)
                 window named as (partition by ${key} order by row)) e) f
     where f.other_row is not null`,
  );
}
