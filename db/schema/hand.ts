// What people changed here, apart from any file. A later file does not overwrite it.
import { sql } from "drizzle-orm";
import {
  bigint,
  check,
  foreignKey,
  index,
  integer,
  jsonb,
  pgTable,
  primaryKey,
  text,
  uniqueIndex,
} from "drizzle-orm/pg-core";
import { batchColumn, instantColumn, keyColumn } from "./columns";
import { batches } from "./intake";

const editId = () => bigint("edit_id", { mode: "number" }).notNull();

/** One field that a person set. It holds against files until it is lifted: by a later edit, or by taking the file's value. */
export const handEdits = pgTable(
  "hand_edits",
  {
    editId: editId().primaryKey().generatedAlwaysAsIdentity(),
    tableName: text("table_name").notNull(),
    /** As batch_changes writes it. */
    key: text("key").notNull(),
    columnName: text("column_name").notNull(),
    valueBefore: jsonb("value_before"),
    value: jsonb("value"),
    at: instantColumn("at").notNull(),
    by: text("by").notNull(),
    reason: text("reason").notNull(),
    liftedAt: instantColumn("lifted_at"),
  },
  (table) => [
    uniqueIndex("hand_edits_one_holds_a_field")
      .on(table.tableName, table.key, table.columnName)
      .where(sql`lifted_at is null`),
    index("hand_edits_by_row").on(table.tableName, table.key),
  ],
);

/** Where a file says otherwise than a field that was edited here: what it says. The edited value stands. */
export const editDifferences = pgTable(
  "edit_differences",
  {
    batchId: batchColumn()
      .notNull()
      .references(() => batches.batchId),
    row: integer("row").notNull(),
    editId: editId().notNull(),
    fileValue: jsonb("file_value"),
  },
  (table) => [
    primaryKey({ columns: [table.batchId, table.row, table.editId] }),
    index("edit_differences_by_edit").on(table.editId),
    foreignKey({ columns: [table.editId], foreignColumns: [handEdits.editId], name: "edit_differences_of_an_edit" }),
  ],
);

/**
 * Jobs that came without a serial and were moved from their placeholder to the real unit, by each batch that gave the
 * serial or by hand. The placeholder stays, without jobs, so that the move can be taken back.
 */
export const jobJoins = pgTable(
  "job_joins",
  {
    joinId: bigint("join_id", { mode: "number" }).primaryKey().generatedAlwaysAsIdentity(),
    jobId: keyColumn("job_id").notNull(),
    fromUnitId: keyColumn("from_unit_id").notNull(),
    toUnitId: keyColumn("to_unit_id").notNull(),
    /** Null: by hand, with who and why. */
    batchId: batchColumn().references(() => batches.batchId),
    by: text("by"),
    reason: text("reason"),
    at: instantColumn("at").notNull(),
    /** Kept after it was undone: entries of batches may still name the job by either unit. */
    undoneAt: instantColumn("undone_at"),
  },
  (table) => [
    index("job_joins_by_job").on(table.jobId),
    uniqueIndex("job_joins_once_a_batch").on(table.jobId, table.batchId).where(sql`undone_at is null`),
    check("job_joins_by_batch_or_hand", sql`(${table.batchId} is null) = (${table.by} is not null)`),
    check("job_joins_move", sql`${table.fromUnitId} <> ${table.toUnitId}`),
  ],
);
