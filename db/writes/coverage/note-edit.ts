import { sql } from "drizzle-orm";
import type { Transaction } from "../../database-types";

export interface HandEdit {
  readonly table: "units" | "unit_facts";
  readonly key: string;
  readonly column: string;
  readonly before: unknown;
  readonly value: unknown;
  readonly by: string;
  readonly reason: string;
}

/** Keeps what a field was, what it is, who set it and why. An earlier edit of the same field holds no longer. */
export async function noteEdit(tx: Transaction, edit: HandEdit): Promise<void> {
  const { table, key, column, before, value, by, reason } = edit;
  await tx.execute(sql`
    update hand_edits set lifted_at = now()
    where table_name = ${table} and key = ${key} and column_name = ${column} and lifted_at is null`);
  await tx.execute(sql`
    insert into hand_edits (table_name, key, column_name, value_before, value, at, by, reason)
    values (${table}, ${key}, ${column}, ${JSON.stringify(before ?? null)}::jsonb, ${JSON.stringify(value ?? null)}::jsonb, now(), ${by}, ${reason})`);
}
