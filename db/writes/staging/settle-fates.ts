import type { Transaction } from "@/db/database-types";
import { run } from "./run";
import type { Staged, StagedColumn, StagedKind } from "./staged-kind";

/** Says of each staged row without problems whether it is new, changes a stored row, or is already there. */
export async function settleFates(tx: Transaction, staged: Staged, kind: StagedKind): Promise<void> {
  const { target } = kind;
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
