import type { Transaction } from "@/db/database-types";
import { keySeparator } from "./merge-staged";
import { nameColumn } from "./name-column";
import { rowsOf, run } from "./run";
import { changeableColumns, storedAt } from "./settle-fates";
import type { StagedFile, StagedPart } from "./staged-file";
import type { StagedKind } from "./staged-kind";

/**
 * A field that was edited here is not overwritten by a file: staged rows take the stored value of such fields, and a
 * temporary table `kept_edits` tells where the file says otherwise.
 */
export async function keepEdits(tx: Transaction, { parts }: StagedFile): Promise<void> {
  await run(
    tx,
    `create temporary table kept_edits (row integer, kind text, name text, edit_id bigint, column_name text, file_value jsonb, kept_value jsonb) on commit drop`,
  );
  for (const part of parts) await keepEditsOf(tx, part);
}

async function keepEditsOf(tx: Transaction, part: StagedPart): Promise<void> {
  const { staged, kind } = part;
  const { table } = kind.target;
  const found = await rowsOf<{ column: string }>(
    tx,
    `select distinct column_name as column from hand_edits where table_name = '${table}' and lifted_at is null`,
  );
  const names = new Set(found.map(({ column }) => column));
  const named = nameColumn(kind);
  for (const { name } of changeableColumns(staged, kind)) {
    if (!names.has(name)) continue;
    const edited = `hand_edits e, ${table} t where e.table_name = '${table}' and e.column_name = '${name}' and e.lifted_at is null
      and e.key = ${storedKeyText(kind)} and ${storedAt(kind)} and s.readable and s.problems is null and s.${name} is distinct from t.${name}`;
    await run(
      tx,
      `insert into kept_edits select s.row, '${kind.kind}', s.${named}::text, e.edit_id, '${name}', to_jsonb(s.${name}), to_jsonb(t.${name})
       from ${staged.table} s, ${edited}`,
    );
    await run(tx, `update ${staged.table} s set ${name} = t.${name} from ${edited}`);
  }
}

/** SQL: the key of the row on file for staged row `s`, as batch_changes writes it. */
function storedKeyText({ target: { key, storedKey = {} } }: StagedKind): string {
  return key.map((column) => `(${storedKey[column] ?? `s.${column}`})::text`).join(` || ${keySeparator} || `);
}
