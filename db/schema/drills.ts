// What is known of the backups: which one was restored on trial, when, and whether it held.
import { sql } from "drizzle-orm";
import { bigint, check, index, integer, pgTable, text } from "drizzle-orm/pg-core";
import { instantColumn } from "./columns";

/** One line for each trial of restoring a backup into an empty database; lines are only ever added. */
export const restoreDrills = pgTable(
  "restore_drills",
  {
    drillId: integer("drill_id").primaryKey().generatedAlwaysAsIdentity(),
    /** When the backup that was tried had been made. */
    backupAt: instantColumn("backup_at").notNull(),
    finishedAt: instantColumn("finished_at").notNull(),
    rows: bigint("rows", { mode: "number" }).notNull(),
    /** Null where all came back as it was; else the first thing that did not. */
    problem: text("problem"),
  },
  (table) => [
    index("restore_drills_by_end").on(table.finishedAt),
    check("restore_drills_after_backup", sql`${table.finishedAt} >= ${table.backupAt}`),
    check("restore_drills_rows", sql`${table.rows} >= 0`),
  ],
);
