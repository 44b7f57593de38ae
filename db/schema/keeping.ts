// How long things are kept, and which customers asked to be forgotten.
import { sql } from "drizzle-orm";
import { check, integer, jsonb, pgTable, text, uuid, varchar } from "drizzle-orm/pg-core";
import { instantColumn } from "./columns";

/** Hash of a name, number or address, with what is needed to find it again in any text. The words themselves are kept nowhere. */
export interface WordPrint {
  /** Letters and digits of the whole, blanks and signs left out. */
  readonly length: number;
  readonly sha256: string;
  /** True for a word that is looked for in the customer's own jobs only, since others may bear the same name. */
  readonly own: boolean;
}

export interface ErasedJob {
  readonly unitId: string;
  readonly jobId: string;
  readonly jobNumber: string;
}

/** One customer who was forgotten. Enough to do it again after a backup from before was restored, and nothing that says who it was. */
export const erasures = pgTable(
  "erasures",
  {
    erasureId: uuid("erasure_id").primaryKey(),
    at: instantColumn("at").notNull(),
    by: text("by").notNull(),
    reason: text("reason").notNull(),
    jobs: jsonb("jobs").$type<readonly ErasedJob[]>().notNull(),
    salt: varchar("salt", { length: 64 }).notNull(),
    prints: jsonb("prints").$type<readonly WordPrint[]>().notNull(),
    /** Cells in which something was erased, by table and column. */
    erased: jsonb("erased").$type<readonly { readonly place: string; readonly cells: number }[]>().notNull(),
    /** What still names the customer, each with the reason. */
    kept: jsonb("kept").$type<readonly { readonly what: string; readonly why: string }[]>().notNull(),
  },
  (table) => [
    check("erasures_by_somebody", sql`btrim(${table.by}) <> '' and btrim(${table.reason}) <> ''`),
    check("erasures_salted", sql`${table.salt} ~ '^[0-9a-f]{64}$'`),
  ],
);

/** Where the company keeps something for longer or shorter than the program would by itself. Each change is in the change log. */
export const retentionLimits = pgTable(
  "retention_limits",
  {
    kind: text("kind").primaryKey(),
    /** Null: kept for good. */
    days: integer("days"),
    setBy: text("set_by").notNull(),
    setAt: instantColumn("set_at").notNull(),
  },
  (table) => [
    check("retention_limits_days", sql`${table.days} between 1 and 36500`),
    check("retention_limits_by_somebody", sql`btrim(${table.setBy}) <> ''`),
  ],
);
