// Money: covered work without its pay, and payers' lists of what they paid.
import { sql } from "drizzle-orm";
import {
  bigint,
  boolean,
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
import type { Leak } from "@/lib/claims/leaks/leak";
import type { RefusalReason } from "@/lib/claims/life/refusal-reason";
import type { LineFate } from "@/lib/claims/remittance/line-fate";

import type { ClaimShare, RemittanceMatch } from "@/lib/claims/remittance/remittance-line";
import type { Currency } from "@/lib/domain/money";
import type { RemittanceColumns } from "@/lib/intake/remittances/remittance-columns";
import type { TableForm } from "@/lib/intake/tables/table-form";
import { claimEvents } from "./claim-life";
import { bytesColumn, centsColumn, dayColumn, instantColumn, keyColumn } from "./columns";

/**
 * Covered work without its pay, concluded from jobs, units, policies and claims: deleted and judged anew unit by unit in
 * the transaction that changed them, never adjusted; like every count it holds on to no row. Nothing in it depends on today: whether it is late is asked of `due_on`.
 */
export const unclaimedWork = pgTable(
  "unclaimed_work",
  {
    unitId: keyColumn("unit_id").notNull(),
    jobId: keyColumn("job_id").notNull(),
    policyId: integer("policy_id").notNull(),
    leak: text("leak").$type<Leak>().notNull(),
    /** Empty where nothing was filed. */
    claimNumber: text("claim_number"),
    payer: text("payer").notNull(),
    component: text("component"),
    completedOn: dayColumn("completed_on").notNull(),
    /** Last day to file, to correct or to dispute; empty where no clock runs. */
    dueOn: dayColumn("due_on"),
    currency: varchar("currency", { length: 3 }).$type<Currency>().notNull(),
    partsCents: centsColumn("parts_cents").notNull(),
    labourCents: centsColumn("labour_cents").notNull(),
    tripCents: centsColumn("trip_cents").notNull(),
    diagnosisCents: centsColumn("diagnosis_cents").notNull(),
    handlingCents: centsColumn("handling_cents").notNull(),
    amountCents: centsColumn("amount_cents").notNull(),
    /**
     * What has to be added before it can be filed, in the words of a release that kept them with each row. Where
     * `missing_key` is given the words stand there, and here only what tells that release so.
     */
    missing: jsonb("missing").$type<readonly string[]>().notNull(),
    reason: text("reason").notNull(),
    missingKey: keyColumn("missing_key"),
  },
  (table) => [
    primaryKey({ columns: [table.unitId, table.jobId, table.policyId, table.leak] }),
    index("unclaimed_work_by_leak").on(table.leak, table.dueOn),
    check(
      "unclaimed_work_known_leak",
      sql`${table.leak} in ('never filed', 'parts only', 'campaign', 'not corrected', 'short-paid', 'part credit', 'charged back', 'repeat absorbed')`,
    ),
    check(
      "unclaimed_work_adds_up",
      sql`${table.amountCents} = ${table.partsCents} + ${table.labourCents} + ${table.tripCents} + ${table.diagnosisCents} + ${table.handlingCents}`,
    ),
    check(
      "unclaimed_work_not_negative",
      sql`least(${table.partsCents}, ${table.labourCents}, ${table.tripCents}, ${table.diagnosisCents}, ${table.handlingCents}) >= 0`,
    ),
    check("unclaimed_work_has_reason", sql`btrim(${table.reason}) <> ''`),
  ],
);

/**
 * What is missing of covered work before it can be filed: each list of sentences once, however many rows want the same,
 * since a great many do. No row is held on to; lists that none names any more go when everything is judged anew.
 */
export const missingLists = pgTable("missing_lists", {
  /** Made from the words. */
  missingKey: keyColumn("missing_key").primaryKey(),
  missing: jsonb("missing").$type<readonly string[]>().notNull(),
});

/**
 * Units that changed in a load too large to judge within it; they are judged right after, or by the next one who asks.
 * Who marks a unit again gives it another mark, so that whoever judged it before that does not take the new mark off.
 */
export const unitsToJudge = pgTable(
  "units_to_judge",
  {
    unitId: keyColumn("unit_id").notNull(),
    mark: bigint("mark", { mode: "number" }).notNull().generatedByDefaultAsIdentity(),
  },
  (table) => [primaryKey({ columns: [table.unitId] })],
);

/** One row, or none, in place of a mark on every unit: something that all are held against has changed. */
export const allToJudge = pgTable(
  "all_to_judge",
  {
    only: boolean("only").primaryKey().default(true),
    mark: bigint("mark", { mode: "number" }).notNull().generatedByDefaultAsIdentity(),
  },
  (table) => [check("all_to_judge_once", sql`${table.only}`)],
);

/** A payer's list of what it paid, kept byte for byte. */
export const remittances = pgTable(
  "remittances",
  {
    remittanceId: integer("remittance_id").primaryKey().generatedAlwaysAsIdentity(),
    fileName: text("file_name").notNull(),
    fileSha256: varchar("file_sha256", { length: 64 }).notNull(),
    content: bytesColumn("content").notNull(),
    payer: text("payer").notNull(),
    /** Number of the payment, such as of a cheque or transfer. */
    reference: text("reference").notNull(),
    paidOn: dayColumn("paid_on").notNull(),
    /** For lines that name no currency. */
    currency: varchar("currency", { length: 3 }).$type<Currency>().notNull(),
    form: jsonb("form").$type<TableForm>().notNull(),
    header: jsonb("header").$type<readonly string[]>().notNull(),
    columns: jsonb("columns").$type<RemittanceColumns>().notNull(),
    /** Empty until somebody looked at the columns and said yes; only then lines are read. */
    columnsConfirmedBy: text("columns_confirmed_by"),
    receivedAt: instantColumn("received_at").notNull(),
    receivedBy: text("received_by").notNull(),
    undoneAt: instantColumn("undone_at"),
    undoneBy: text("undone_by"),
    /** Counts every change; whoever writes says which one was seen. */
    version: integer("version").notNull(),
  },
  (table) => [
    uniqueIndex("remittances_one_file_once").on(table.fileSha256).where(sql`undone_at is null`),
    check("remittances_hashed", sql`encode(sha256(${table.content}), 'hex') = ${table.fileSha256}`),
    check(
      "remittances_named",
      sql`btrim(${table.payer}) <> '' and btrim(${table.reference}) <> '' and btrim(${table.receivedBy}) <> ''`,
    ),
    check("remittances_undone_by_somebody", sql`(${table.undoneAt} is null) = (${table.undoneBy} is null)`),
    check("remittances_version_counts_from_one", sql`${table.version} >= 1`),
  ],
);

/** Every line of a list, each with one fate. */
export const remittanceLines = pgTable(
  "remittance_lines",
  {
    remittanceId: integer("remittance_id")
      .notNull()
      .references(() => remittances.remittanceId),
    /** As a spreadsheet numbers it. */
    row: integer("row").notNull(),
    /** As they stand in the file. */
    cells: jsonb("cells").$type<readonly string[]>().notNull(),
    fate: text("fate").$type<LineFate>().notNull(),
    /** Empty where the row could not be read. */
    paidCents: centsColumn("paid_cents"),
    currency: varchar("currency", { length: 3 }).$type<Currency>(),
    payerText: text("payer_text").notNull(),
    /** Our reason for the payer's words; empty where there is nothing to give a reason for, or nobody has said. */
    reason: text("reason").$type<RefusalReason>(),
    match: jsonb("match").$type<RemittanceMatch>(),
    /** To which claims and lines its sum goes; empty while nobody knows. */
    shares: jsonb("shares").$type<readonly ClaimShare[]>(),
    /** Why it is where it is, in a sentence with what to do. */
    sentence: text("sentence").notNull(),
    decidedBy: text("decided_by"),
  },
  (table) => [
    primaryKey({ columns: [table.remittanceId, table.row] }),
    index("remittance_lines_by_fate").on(table.fate),
    check(
      "remittance_lines_known_fate",
      sql`${table.fate} in ('ready', 'asked', 'tray', 'unreadable', 'posted', 'set aside', 'undone')`,
    ),
    check(
      "remittance_lines_go_somewhere",
      sql`${table.fate} not in ('ready', 'asked', 'posted', 'undone') or (${table.shares} is not null and ${table.paidCents} is not null)`,
    ),
    check("remittance_lines_set_aside_by", sql`${table.fate} <> 'set aside' or ${table.decidedBy} is not null`),
  ],
);

/** Which event of which claim a line became. A line is posted to a claim once, however often it is asked. */
export const remittancePostings = pgTable(
  "remittance_postings",
  {
    remittanceId: integer("remittance_id").notNull(),
    row: integer("row").notNull(),
    unitId: keyColumn("unit_id").notNull(),
    claimId: keyColumn("claim_id").notNull(),
    event: integer("event").notNull(),
  },
  (table) => [
    primaryKey({ columns: [table.remittanceId, table.row, table.unitId, table.claimId] }),
    foreignKey({
      columns: [table.remittanceId, table.row],
      foreignColumns: [remittanceLines.remittanceId, remittanceLines.row],
      name: "remittance_postings_of_a_line",
    }),
    foreignKey({
      columns: [table.unitId, table.claimId, table.event],
      foreignColumns: [claimEvents.unitId, claimEvents.claimId, claimEvents.event],
      name: "remittance_postings_are_events",
    }),
    index("remittance_postings_by_claim").on(table.unitId, table.claimId),
  ],
);

/**
 * A payer's words and what they mean in our list of reasons, as somebody said. What was said before is kept: the highest
 * version holds, and what was posted under an earlier one stays as it was posted.
 */
export const payerWordings = pgTable(
  "payer_wordings",
  {
    payer: text("payer").notNull(),
    /** In lower case with single blanks. */
    words: text("words").notNull(),
    version: integer("version").notNull().default(1),
    reason: text("reason").$type<RefusalReason>().notNull(),
    setBy: text("set_by").notNull(),
    setAt: instantColumn("set_at").notNull(),
  },
  (table) => [
    primaryKey({ columns: [table.payer, table.words, table.version] }),
    check("payer_wordings_said_by_somebody", sql`btrim(${table.words}) <> '' and btrim(${table.setBy}) <> ''`),
    check("payer_wordings_version_counts_from_one", sql`${table.version} >= 1`),
  ],
);
