// Photos and papers that a person took off a job, kept for a while so that it can be undone.
import { sql } from "drizzle-orm";
import { check, index, jsonb, pgTable, primaryKey, text } from "drizzle-orm/pg-core";
import { bytesColumn, instantColumn, keyColumn } from "./columns";

export const removedAttachments = pgTable(
  "removed_attachments",
  {
    unitId: keyColumn("unit_id").notNull(),
    jobId: keyColumn("job_id").notNull(),
    attachmentId: keyColumn("attachment_id").notNull(),
    /** The row of `attachments` as it was, without its bytes. */
    attachment: jsonb("attachment").notNull(),
    content: bytesColumn("content").notNull(),
    removedAt: instantColumn("removed_at").notNull(),
    removedBy: text("removed_by").notNull(),
  },
  (table) => [
    primaryKey({ columns: [table.unitId, table.jobId, table.attachmentId] }),
    index("removed_attachments_by_time").on(table.removedAt),
    check("removed_attachments_by_somebody", sql`btrim(${table.removedBy}) <> ''`),
  ],
);
