// What was done to the records that people answer for, by whom and when. Rows are only ever added, and each is chained to
// the one before it. The migration that made the tables has the triggers that fill, chain and guard them.
import { sql } from "drizzle-orm";
import { bigint, check, integer, pgTable, smallint, text, unique, varchar } from "drizzle-orm/pg-core";
import { instantColumn } from "./columns";

/**
 * One entry for each row of a watched table that a statement added, changed or removed; of a statement that touched more
 * than a hundred, one entry for all of them. What the row says stays in its own table: here is only its hash, so that
 * nothing is kept twice and no person's name is kept here.
 */
export const changeLog = pgTable(
  "change_log",
  {
    changeId: bigint("change_id", { mode: "number" }).primaryKey().generatedAlwaysAsIdentity(),
    at: instantColumn("at").notNull().default(sql`clock_timestamp()`),
    /** Who was signed in, else whom the row itself names, else the program. */
    by: text("by").notNull(),
    tableName: text("table_name").notNull(),
    /** The row's primary key, its parts joined by the unit separator (character 31); empty where one entry stands for many rows. */
    key: text("key").notNull(),
    what: text("what").$type<"added" | "changed" | "removed" | "emptied">().notNull(),
    rows: bigint("rows", { mode: "number" }).notNull(),
    /** How many columns the table had had until then: later ones are left out when the row is compared with its hash. */
    width: smallint("width").notNull(),
    /** Of the row as JSON after the change, or as it was removed; empty where one entry stands for many rows. */
    rowSha256: text("row_sha256").notNull(),
  },
  (table) => [
    check("change_log_known_what", sql`${table.what} in ('added', 'changed', 'removed', 'emptied')`),
    check("change_log_by_somebody", sql`btrim(${table.by}) <> ''`),
    check("change_log_hashed", sql`${table.rowSha256} ~ '^([0-9a-f]{64})?$'`),
  ],
);

/** The order in which entries were committed: each link's hash covers its entry and the link before. No number is left out. */
export const changeChain = pgTable(
  "change_chain",
  {
    link: bigint("link", { mode: "number" }).primaryKey(),
    changeId: bigint("change_id", { mode: "number" })
      .notNull()
      .references(() => changeLog.changeId),
    sha256: varchar("sha256", { length: 64 }).notNull(),
  },
  (table) => [unique("change_chain_one_link_an_entry").on(table.changeId)],
);

/** What the program did by itself or by command, such as the nightly checks; the Health page shows the last of each. */
export const programRuns = pgTable(
  "program_runs",
  {
    runId: integer("run_id").primaryKey().generatedAlwaysAsIdentity(),
    program: text("program").$type<"check-evidence" | "check-log" | "retention">().notNull(),
    startedAt: instantColumn("started_at").notNull(),
    finishedAt: instantColumn("finished_at").notNull(),
    /** How many things were found wrong; of a retention run, how many were removed. */
    found: bigint("found", { mode: "number" }).notNull(),
    /** The first of them, in sentences without a person's name. */
    first: text("first").array().notNull(),
    /** Why the run did not come to its end; null where it did. */
    problem: text("problem"),
  },
  (table) => [
    check("program_runs_known_program", sql`${table.program} in ('check-evidence', 'check-log', 'retention')`),
    check("program_runs_in_order", sql`${table.startedAt} <= ${table.finishedAt}`),
    check("program_runs_found_not_negative", sql`${table.found} >= 0`),
  ],
);
