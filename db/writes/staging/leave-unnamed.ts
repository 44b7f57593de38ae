import type { Transaction } from "@/db/database-types";
import { run } from "./run";
import { changeableColumns, storedAt } from "./settle-fates";
import type { Staged, StagedKind } from "./staged-kind";

/** Where rows differ in their columns, a row takes over what is stored in those that it does not name. */
export async function leaveUnnamed(tx: Transaction, staged: Staged, kind: StagedKind): Promise<void> {
  const columns = changeableColumns(staged, kind);
  if (staged.sparse !== true || columns.length === 0) return;
  const values = columns.map(
    ({ name, from }) => `${name} = case when s.cells ? '${from}' then s.${name} else t.${name} end`,
  );
  await run(
    tx,
    `update ${staged.table} s set ${values.join(", ")} from ${kind.target.table} t where s.readable and ${storedAt(kind)}`,
  );
}
