import type { Transaction } from "@/db/database-types";
import { isFirst } from "../bulk/rewrite-staged";
import { rowsOf, run } from "./run";
import type { Staged, StagedColumn, StagedKind } from "./staged-kind";

/** Says of each staged row without problems whether it is new, changes a stored row, or is already there. */
export async function settleFates(tx: Transaction, staged: Staged, kind: StagedKind): Promise<void> {
  const { target } = kind;
  if ((await isFirst(tx, staged, target.table)) && (await settleFirst(tx, staged, kind))) return;
  await run(
    tx,
    `update ${staged.table} s set fate = f.fate
     from (select s.row, case
             when s.row <> min(s.row) over (partition by ${target.key.map((column) => `s.${column}`).join(", ")}) then 'same'
             when t.${target.key[0]} is null then 'new'
             when ${differs(staged, kind)} then 'changed'
             else 'same' end as fate
           from ${staged.table} s left join ${target.table} t on ${storedAt(kind)}
           where s.problems is null and s.readable) f
     where f.row = s.row`,
  );
}

/** Where nothing is on file, rows are new unless they are held or the file repeats them. @returns false where their fates are not set yet */
async function settleFirst(tx: Transaction, { table }: Staged, { target }: StagedKind): Promise<boolean> {
  const [found] = await rowsOf<{ any: boolean }>(tx, `select exists (select from ${table} where fate = 'new') as any`);
  if (found?.any !== true) return false;
  const key = target.key.join(", ");
  await run(tx, `update ${table} set fate = null where problems is not null or (fate = 'new' and not readable)`);
  await run(
    tx,
    `update ${table} s set fate = 'same' from (
       select ${key}, min(row) as row from ${table} where fate is not null group by ${key} having count(*) > 1) f
     where s.fate is not null and ${target.key.map((column) => `s.${column} = f.${column}`).join(" and ")} and s.row <> f.row`,
  );
  return true;
}

/** SQL: row `t` is the one on file for staged row `s`, before the merge. */
export function storedAt({ target: { key, storedKey = {} } }: StagedKind): string {
  return key.map((column) => `t.${column} = ${storedKey[column] ?? `s.${column}`}`).join(" and ");
}

/** Columns that this file may change in a stored row. */
export function changeableColumns({ present }: Staged, { columns }: StagedKind): readonly StagedColumn[] {
  return columns.filter(({ use, from }) => use === "value" && present.has(from));
}

function differs(staged: Staged, kind: StagedKind): string {
  const names = changeableColumns(staged, kind).map(({ name }) => name);
  const values = names.map((name) => `t.${name} is distinct from s.${name}`);
  return (
    [...values, ...(kind.target.alsoDiffers === undefined ? [] : [`(${kind.target.alsoDiffers})`])].join(" or ") ||
    "false"
  );
}
