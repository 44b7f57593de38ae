// Batches: what was loaded, from which file, and what it takes to take it back.
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
  varchar,
} from "drizzle-orm/pg-core";
import type { Matching } from "@/lib/intake/matching/matching";
import type { CellProblem } from "@/lib/intake/parsed";
import type { CellMark } from "@/lib/intake/tables/source-row";
import type { TableForm } from "@/lib/intake/tables/table-form";
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
    /** Rows that are no record: totals, repeated headers, notes below the table. */
    rowsRefused: integer("rows_refused").notNull().default(0),
    /** How somebody's own file was read, and its columns matched; null for a file in our own columns. */
    form: jsonb("form").$type<TableForm>(),
    matching: jsonb("matching").$type<Matching>(),
    /** The load whose held rows this one brought in, mended. */
    parentBatch: bigint("parent_batch", { mode: "number" }),
    addedAt: instantColumn("added_at").notNull(),
    takenBackAt: instantColumn("taken_back_at"),
  },
  (table) => [
    foreignKey({ columns: [table.parentBatch], foreignColumns: [table.batchId], name: "batches_mend_a_batch" }),
    index("batches_by_parent").on(table.parentBatch),
    uniqueIndex("batches_one_file_once").on(table.kind, table.fileSha256).where(sql`state = 'added'`),
    check(
      "batches_rows_add_up",
      sql`${table.rowsTotal} = ${table.rowsNew} + ${table.rowsChanged} + ${table.rowsSame} + ${table.rowsHeld} + ${table.rowsRefused}`,
    ),
    check("batches_known_state", sql`${table.state} in ('added', 'taken_back')`),
    check("batches_taken_back_has_time", sql`(${table.state} = 'taken_back') = (${table.takenBackAt} is not null)`),
  ],
);

/**
 * Rows that the batch did not take in: the row as it stood and everything wrong with it. Never dropped.
 * held: waits for a person. refused: is no record. mended: corrected and taken in by another batch. left_out: a person said so.
 */
export const heldRows = pgTable(
  "held_rows",
  {
    batchId: batchColumn()
      .notNull()
      .references(() => batches.batchId),
    /** Row number as a spreadsheet shows it: the header is row 1. */
    row: integer("row").notNull(),
    /** By the header of the file's column. */
    cells: jsonb("cells").$type<Record<string, string>>().notNull(),
    /** The same row of somebody's own file as it was read, so that it can be read again after a correction. */
    source: jsonb("source").$type<StoredSource>(),
    problems: jsonb("problems").$type<readonly CellProblem[]>().notNull(),
    state: text("state").$type<HeldState>().notNull().default("held"),
    /** What a person wrote instead of cells of the row, by column; kept while the row still has other problems. */
    corrections: jsonb("corrections").$type<Record<string, string>>().notNull().default({}),
    /** Why it is refused, or was left out. */
    reason: text("reason"),
    mendedBy: bigint("mended_by", { mode: "number" }).references(() => batches.batchId),
  },
  (table) => [
    primaryKey({ columns: [table.batchId, table.row] }),
    index("held_rows_by_mending").on(table.mendedBy),
    check("held_rows_known_state", sql`${table.state} in ('held', 'refused', 'mended', 'left_out')`),
    check(
      "held_rows_reason_where_due",
      sql`(${table.state} in ('refused', 'left_out')) = (${table.reason} is not null)`,
    ),
    check("held_rows_mended_by_a_batch", sql`(${table.state} = 'mended') = (${table.mendedBy} is not null)`),
  ],
);

export type HeldState = "held" | "refused" | "mended" | "left_out";

/** A source row as JSON can hold it. */
export interface StoredSource {
  readonly cells: readonly string[];
  readonly marks?: readonly (readonly [place: number, mark: CellMark])[];
}

/** Cells that were not taken as they stood. Kept for good, also for loads that were taken back. */
export const cellNotes = pgTable(
  "cell_notes",
  {
    batchId: batchColumn()
      .notNull()
      .references(() => batches.batchId),
    row: integer("row").notNull(),
    /** Counts the notes of one row. */
    place: integer("place").notNull(),
    source: text("source").notNull(),
    column: text("column").notNull(),
    raw: text("raw").notNull(),
    taken: text("taken").notNull(),
    note: text("note").notNull(),
    /** The job that the row speaks of; null where it speaks of none, or was held. Made from the job number, so it outlives a move to another unit. */
    jobId: keyColumn("job_id"),
    unitId: keyColumn("unit_id"),
  },
  (table) => [
    primaryKey({ columns: [table.batchId, table.row, table.place] }),
    index("cell_notes_by_job").on(table.jobId),
    index("cell_notes_by_unit").on(table.unitId),
  ],
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

/**
 * The rows that a batch made, where their keys are numbers: batch_changes holds an entry each for the few that were
 * changed or kept, this holds thousands of keys in one row, at a hundredth of the cost.
 */
export const batchMade = pgTable(
  "batch_made",
  {
    batchId: batchColumn()
      .notNull()
      .references(() => batches.batchId),
    tableName: text("table_name").notNull(),
    part: integer("part").notNull(),
    /** The columns of the table's primary key, in its order; a key of fewer has no second or third. */
    first: bigint("first", { mode: "bigint" }).array().notNull(),
    second: bigint("second", { mode: "bigint" }).array(),
    third: bigint("third", { mode: "bigint" }).array(),
  },
  (table) => [primaryKey({ columns: [table.batchId, table.tableName, table.part] })],
);
