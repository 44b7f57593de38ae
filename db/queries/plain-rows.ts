import { type SQL, sql } from "drizzle-orm";
import { getTableConfig, type PgTable } from "drizzle-orm/pg-core";
import type { Reader } from "../database-types";

/**
 * Rows of one table as drizzle's `select` types them, without its work on each cell, which is most of the cost where
 * rows come in hundreds of thousands. Keys, days and instants come as text either way; cents are asked for as numbers.
 * Checked: tests/db/money/plain-rows.test.ts, against `select`.
 * @param without  columns that nobody looks at
 * @param tail  everything after the table, which is named `t`: joins, conditions, order
 */
export async function loadPlainRows<Table extends PgTable, Left extends keyof Table["$inferSelect"] = never>(
  db: Reader,
  table: Table,
  tail: SQL,
  { without = [] }: { readonly without?: readonly Left[] } = {},
): Promise<Omit<Table["$inferSelect"], Left>[]> {
  const left: ReadonlySet<unknown> = new Set(without.map((name) => Reflect.get(table, name)));
  const columns = getTableConfig(table).columns.filter((column) => !left.has(column));
  const names = new Map(Object.entries(table).map(([name, column]) => [column, name]));
  const list = columns.map((column) => {
    const value = sql`t.${sql.identifier(column.name)}`;
    const isCents = column.columnType === "PgBigInt53";
    return sql`${isCents ? sql`${value}::double precision` : value} as ${sql.identifier(names.get(column) ?? column.name)}`;
  });
  return await db.rows<Omit<Table["$inferSelect"], Left>>(
    sql`select ${sql.join(list, sql`, `)} from ${table} t ${tail}`,
  );
}
