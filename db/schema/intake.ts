// Batches: what was loaded, from which file, and what it takes to take it back.
import { sql } from "drizzle-orm";
import { check, index, integer, jsonb, pgTable, primaryKey, text, uniqueIndex, varchar } from "drizzle-orm/pg-core";
import { batchColumn, centsColumn, instantColumn, keyColumn } from "./columns";

export const batches = pgTable(
  "batches",
  {
    batchId: batchColumn().primaryKey().generatedAlwaysAsIdentity(),
    kind: text("kind").notNull(),
    fileName: text("file_name").notNull(),
    fileSha256: varchar("file_sha256", { length: 64 }).notNull(),
    fileBytes: centsColumn("file_bytes").notNull(),
    state: text("state").$type<"added" | "taken_back">().notNull(),
    rowsTotal: integer("rows_total").notNull(),
    rowsNew: integer("rows_new").notNull(),
    rowsChanged: integer("rows_changed").notNull(),
    rowsSame: integer("rows_same").notNull(),
    rowsHeld: integer("rows_held").notNull(),
    addedAt: instantColumn("added_at").notNull(),
    takenBackAt: instantColumn("taken_back_at"),
  },
  (table) => [
    uniqueIndex("batches_one_file_once").on(table.kind, table.fileSha256).where(sql`state = 'added'`),
    check(
      "batches_rows_add_up",
      sql`${table.rowsTotal} = ${table.rowsNew} + ${table.rowsChanged} + ${table.rowsSame} + ${table.rowsHeld}`,
    ),
    check("batches_known_state", sql`${table.state} in ('added', 'taken_back')`),
    check("batches_taken_back_has_time", sql`(${table.state} = 'taken_back') = (${table.takenBackAt} is not null)`),
  ],
);

/** Rows set aside with the batch: the row as it stood and everything wrong with it. Never dropped. */
export const heldRows = pgTable(
  "held_rows",
  {
    batchId: batchColumn()
      .notNull()
      .references(() => batches.batchId),
    /** Row number as a spreadsheet shows it: the header is row 1. */
    row: integer("row").notNull(),
    cells: jsonb("cells").$type<Record<string, string>>().notNull(),
    problems: jsonb("problems").$type<readonly { column: string; problem: string; fix: string }[]>().notNull(),
  },
  (table) => [primaryKey({ columns: [table.batchId, table.row] })],
);

/** What a stored row was before a batch changed it (`before`), or that the batch made it (`before` null). Taking back reads this. */
export const batchChanges = pgTable(
  "batch_changes",
  {
    batchId: batchColumn()
      .notNull()
      .references(() => batches.batchId),
    change: integer("change").notNull(),
    tableName: text("table_name").notNull(),
    unitId: keyColumn("unit_id"),
    key: jsonb("key").notNull(),
    before: jsonb("before"),
  },
  (table) => [
    primaryKey({ columns: [table.batchId, table.change] }),
    index("batch_changes_by_table").on(table.tableName, table.batchId),
  ],
);
