import type { Transaction } from "@/db/database-types";
import type { Rows } from "../bulk/filling";
import { isNumbered, noteMade } from "../bulk/made-rows";
import { run } from "./run";
import { changeableColumns } from "./settle-fates";
import type { Filled, Staged, StagedKind } from "./staged-kind";

/** Character 31, the unit separator, stands in no key. */
export const keySeparator = "chr(31)";

/** The key of a row as batch_changes writes it. */
export function keyText(alias: string, key: readonly string[]): string {
  return key.map((column) => `${alias}.${column}::text`).join(` || ${keySeparator} || `);
}

/** Stores the staged rows whose fate is new or changed, with what each row was before. */
export async function mergeStaged(tx: Transaction, staged: Filled, kind: StagedKind, batchId: number): Promise<void> {
  if (staged.agreed === true && kind.first !== undefined) return await kind.first.store(tx, staged, kind, batchId);
  await kind.prepare?.(tx, staged, batchId);
  await changeRows(tx, staged, kind, batchId);
  await staged.filling.insert([newRows(staged, kind, { batchId })]);
  await noteRows(tx, staged, kind, batchId);
  await kind.finish?.(tx, staged, batchId);
}

/** Notes that the batch's rows hang on stored rows, so that taking back whoever made those leaves them. `select` gives their keys. */
export async function noteUsed(
  tx: Transaction,
  { table, select, batchId }: { table: string; select: string; batchId: number },
): Promise<void> {
  await run(
    tx,
    `insert into batch_changes (batch_id, table_name, key, what) select ${batchId}, '${table}', key, 'used' from (${select}) as named(key)
     on conflict do nothing`,
  );
}

async function changeRows(tx: Transaction, staged: Staged, kind: StagedKind, batchId: number): Promise<void> {
  const { table, key, onUpdate, notRestored = [] } = kind.target;
  const image = ["to_jsonb(t)", ...notRestored.map((column) => `'${column}'`)].join(" - ");
  const from = `from ${staged.table} s where s.fate = 'changed' and ${key.map((column) => `s.${column} = t.${column}`).join(" and ")}`;
  await run(
    tx,
    `insert into batch_changes (batch_id, table_name, key, what, before)
     select ${batchId}, '${table}', ${keyText("t", key)}, 'changed', ${image}
     from ${table} t where exists (select ${from})`,
  );
  const changes = [
    ...changeableColumns(staged, kind).map(({ name }) => `${name} = s.${name}`),
    ...Object.entries(onUpdate?.(staged.present) ?? {}).map(([column, value]) => `${column} = ${value}`),
    `batch_id = ${batchId}`,
  ];
  await run(tx, `update ${table} t set ${changes.join(", ")} ${from}`);
}

/**
 * The new rows, and the table to which they go.
 * @param found  values that stand in other rows, which `join` finds
 */
export function newRows(
  { table: staging, filling }: Filled,
  { target: { table, key, onInsert }, columns }: StagedKind,
  { batchId, found = {}, join = "" }: { batchId: number; found?: Readonly<Record<string, string>>; join?: string },
): Rows {
  const stored = columns.filter(({ use }) => use !== "help").map(({ name }) => name);
  const values: Record<string, string> = {
    ...Object.fromEntries([...key, ...stored].map((column) => [column, `s.${column}`])),
    ...onInsert,
    ...found,
    batch_id: String(batchId),
  };
  const order = filling.tables.includes(table) ? "" : `order by ${key.map((column) => values[column]).join(", ")}`;
  return {
    table,
    statement: `insert into ${table} (${Object.keys(values).join(", ")}) select ${Object.values(values).join(", ")}
      from ${staging} s ${join} where s.fate = 'new' ${order}`,
  };
}

async function noteRows(tx: Transaction, staged: Staged, kind: StagedKind, batchId: number): Promise<void> {
  const { table, key } = kind.target;
  const note = (what: string, rows: string) =>
    run(
      tx,
      `insert into batch_changes (batch_id, table_name, key, what)
       select ${batchId}, '${table}', ${keyText("s", key)}, '${what}' from ${staged.table} s where ${rows}
       on conflict do nothing`,
    );
  if (isNumbered(table)) {
    const from = `select ${key.join(", ")}, row from ${staged.table} where fate = 'new'`;
    await noteMade(tx, { table, key, from, batchId });
  } else {
    await note("made", "s.fate = 'new'");
  }
  await note("kept", "s.fate = 'same'");
}
