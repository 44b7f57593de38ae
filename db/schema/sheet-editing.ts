// What a company edits of its check sheets before it is published, and the ranges that it set for its models by hand.
import { sql } from "drizzle-orm";
import { bigint, check, integer, jsonb, pgTable, text, uniqueIndex, varchar } from "drizzle-orm/pg-core";
import { models } from "./catalogue";
import { doubleColumn, instantColumn } from "./columns";

/** One draft of a sheet at a time; whoever saves over another's saving is told. It may hold what could not be published. */
export const sheetDrafts = pgTable(
  "sheet_drafts",
  {
    sheetKey: varchar("sheet_key", { length: 130 }).primaryKey(),
    /** The version that it began from. */
    editedFrom: integer("edited_from").notNull(),
    document: jsonb("document").notNull(),
    revision: integer("revision").notNull(),
    savedAt: instantColumn("saved_at").notNull(),
    savedBy: text("saved_by").notNull(),
  },
  (table) => [check("sheet_drafts_count_from_one", sql`${table.revision} >= 1 and ${table.editedFrom} >= 1`)],
);

/** Expected ranges that somebody set here. They go before those of files; rows are added and lifted, never changed. */
export const ownRanges = pgTable(
  "own_ranges",
  {
    rangeId: bigint("range_id", { mode: "number" }).primaryKey().generatedAlwaysAsIdentity(),
    modelId: integer("model_id")
      .notNull()
      .references(() => models.modelId),
    check: varchar("check_key", { length: 60 }).notNull(),
    /** Empty for the model; else the part that is fitted, or the temperature of a sensor. */
    condition: text("condition").notNull().default(""),
    low: doubleColumn("low"),
    high: doubleColumn("high"),
    unit: text("unit").notNull(),
    source: text("source").notNull(),
    mark: text("mark").notNull(),
    at: instantColumn("at").notNull(),
    by: text("by").notNull(),
    reason: text("reason").notNull(),
    liftedAt: instantColumn("lifted_at"),
    liftedBy: text("lifted_by"),
  },
  (table) => [
    uniqueIndex("own_ranges_one_in_force")
      .on(table.modelId, table.check, table.condition)
      .where(sql`lifted_at is null`),
    check("own_ranges_not_empty", sql`${table.low} is not null or ${table.high} is not null`),
    check("own_ranges_low_to_high", sql`${table.low} <= ${table.high}`),
    check(
      "own_ranges_say_why",
      sql`btrim(${table.source}) <> '' and btrim(${table.by}) <> '' and btrim(${table.reason}) <> ''`,
    ),
    check("own_ranges_lifted_by", sql`(${table.liftedAt} is null) = (${table.liftedBy} is null)`),
  ],
);
