// Files on their way in, and what was learnt from those that came before.
import { sql } from "drizzle-orm";
import { check, index, jsonb, pgTable, primaryKey, text, uuid, varchar } from "drizzle-orm/pg-core";
import type { TableKind } from "@/lib/intake/file-kinds";
import type { Matching } from "@/lib/intake/matching/matching";
import type { TableForm } from "@/lib/intake/tables/table-form";
import { centsColumn, instantColumn } from "./columns";

export const draftSteps = ["look", "match", "check"] as const;
export type DraftStep = (typeof draftSteps)[number];

/** A file that was chosen and not yet added: whoever leaves finds it as it was. */
export const fileDrafts = pgTable(
  "file_drafts",
  {
    draftId: uuid("draft_id").primaryKey(),
    fileName: text("file_name").notNull(),
    fileBytes: centsColumn("file_bytes").notNull(),
    fileSha256: varchar("file_sha256", { length: 64 }).notNull(),
    step: text("step").$type<DraftStep>().notNull(),
    form: jsonb("form").$type<TableForm>(),
    matching: jsonb("matching").$type<Matching>(),
    /** What was seen in the file, as the page that looks at it keeps it. */
    look: jsonb("look"),
    createdAt: instantColumn("created_at").notNull(),
    updatedAt: instantColumn("updated_at").notNull(),
  },
  (table) => [
    index("file_drafts_by_update").on(table.updatedAt),
    check("file_drafts_known_step", sql`${table.step} in ('look', 'match', 'check')`),
    check("file_drafts_hashed", sql`${table.fileSha256} ~ '^[0-9a-f]{64}$'`),
  ],
);

/** The matching that was accepted last for files with the same header. */
export const rememberedMatchings = pgTable("remembered_matchings", {
  fingerprint: varchar("fingerprint", { length: 64 }).primaryKey(),
  kind: text("kind").$type<TableKind>().notNull(),
  headers: text("headers").array().notNull(),
  form: jsonb("form").$type<TableForm>().notNull(),
  matching: jsonb("matching").$type<Matching>().notNull(),
  usedAt: instantColumn("used_at").notNull(),
});

/** What somebody's word in a column of ours was last said to mean. */
export const rememberedWords = pgTable(
  "remembered_words",
  {
    column: text("column").notNull(),
    word: text("word").notNull(),
    meaning: text("meaning").notNull(),
    usedAt: instantColumn("used_at").notNull(),
  },
  (table) => [primaryKey({ columns: [table.column, table.word] })],
);
