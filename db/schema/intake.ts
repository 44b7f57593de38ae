// Batches: what was loaded, from which file, and what it takes to take it back.
import { sql } from "drizzle-orm";
import { check, index, integer, jsonb, pgTable, primaryKey, text, uniqueIndex, varchar } from "drizzle-orm/pg-core";
import type { CellProblem } from "@/lib/intake/parsed";
import { batchColumn, centsColumn, instantColumn } from "./columns";

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
    problems: jsonb("problems").$type<readonly CellProblem[]>().notNull(),
  },
  (table) => [primaryKey({ columns: [table.batchId, table.row] })],
);

/**
 * What each batch did to each row that its file named. The entries of one row, by batch, are its history: taking a
 * batch out of the middle hands its entry to the next one, so that batches can be taken back in any order.
 */
export const batchChanges = pgTable(
  "batch_changes",
  {
    batchId: batchColumn()
      .notNull()
      .references(() => batches.batchId),
    tableName: text("table_name").notNull(),
    /** The row's primary key, its parts joined by the unit separator (character 31). */
    key: text("key").notNull(),
    /** kept: the file named the row, and it was already so. used: the file did not name it, but rows of the file hang on it. */
    what: text("what").$type<"made" | "changed" | "kept" | "used">().notNull(),
    /** The row before the change. */
    before: jsonb("before"),
  },
  (table) => [
    primaryKey({ columns: [table.tableName, table.key, table.batchId] }),
    index("batch_changes_by_batch").on(table.batchId, table.tableName),
    check("batch_changes_known_what", sql`${table.what} in ('made', 'changed', 'kept', 'used')`),
    check("batch_changes_changed_has_before", sql`(${table.what} = 'changed') = (${table.before} is not null)`),
  ],
);
