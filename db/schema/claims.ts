// Claims: the request to a payer for one unit on one job, with what was asked, on which grounds, and where it stands.
// What was sent and what happened to it is in claim-life.ts.
import { sql } from "drizzle-orm";
import {
  check,
  foreignKey,
  index,
  integer,
  jsonb,
  pgTable,
  primaryKey,
  text,
  unique,
  uniqueIndex,
  varchar,
} from "drizzle-orm/pg-core";
import type { ClaimState } from "@/lib/claims/life/claim-standing";
import type { Currency } from "@/lib/domain/money";
import { centsColumn, dayColumn, instantColumn, keyColumn } from "./columns";
import { policies } from "./coverage";
import { jobs } from "./jobs";

/** State, sums and days are those of `claimStanding` over the claim's events, written in the same transaction as each event. */
export const claims = pgTable(
  "claims",
  {
    unitId: keyColumn("unit_id").notNull(),
    jobId: keyColumn("job_id").notNull(),
    /** Made from job and policy. */
    claimId: keyColumn("claim_id").notNull(),
    /** What people call it, such as C-2025-0147. */
    claimNumber: text("claim_number").notNull(),
    policyId: integer("policy_id")
      .notNull()
      .references(() => policies.policyId),
    payer: text("payer").notNull(),
    state: text("state").$type<ClaimState>().notNull(),
    currency: varchar("currency", { length: 3 }).$type<Currency>().notNull(),
    /** What the draft came to when it was built; what was asked once it was sent. */
    claimedCents: centsColumn("claimed_cents").notNull(),
    /** Null until the payer answered. */
    approvedCents: centsColumn("approved_cents"),
    paidCents: centsColumn("paid_cents").notNull().default(0),
    clawedBackCents: centsColumn("clawed_back_cents").notNull().default(0),
    openCents: centsColumn("open_cents").notNull().default(0),
    fileBy: dayColumn("file_by"),
    /** Number of the latest submission, which is how often it was filed; null for a draft. The migration ties it to its row, deferred, which drizzle can't say. */
    submission: integer("submission"),
    firstSentOn: dayColumn("first_sent_on"),
    lastSentOn: dayColumn("last_sent_on"),
    answeredOn: dayColumn("answered_on"),
    paidOn: dayColumn("paid_on"),
    /** The payer's own number of this claim. */
    payerReference: text("payer_reference"),
    /** Last day for a corrected claim, while it waits for one. */
    resubmitBy: dayColumn("resubmit_by"),
    keepPartUntil: dayColumn("keep_part_until"),
    /** The decision and the evidence check as they stood when the claim was built. */
    decision: jsonb("decision").notNull(),
    evidence: jsonb("evidence").notNull(),
    builtAt: instantColumn("built_at").notNull(),
    /** Counts every event; whoever writes says which one was seen. */
    version: integer("version").notNull(),
  },
  (table) => [
    primaryKey({ columns: [table.unitId, table.claimId] }),
    foreignKey({
      columns: [table.unitId, table.jobId],
      foreignColumns: [jobs.unitId, jobs.jobId],
      name: "claims_of_a_job",
    }),
    unique("claims_numbered_once").on(table.unitId, table.claimNumber),
    uniqueIndex("claims_one_open_per_job_and_policy")
      .on(table.unitId, table.jobId, table.policyId)
      .where(sql`state <> 'withdrawn'`),
    index("claims_by_number").on(table.claimNumber),
    index("claims_by_state").on(table.state),
    check(
      "claims_amount_not_negative",
      sql`${table.claimedCents} >= 0 and ${table.approvedCents} >= 0 and ${table.paidCents} >= 0 and ${table.openCents} >= 0`,
    ),
    check(
      "claims_known_state",
      sql`${table.state} in ('draft', 'withdrawn', 'sent', 'received', 'approved', 'needs correction', 'rejected', 'appealed', 'short-paid', 'paid', 'written off', 'in audit', 'clawed back')`,
    ),
    check("claims_version_counts_from_one", sql`${table.version} >= 1`),
    check(
      "claims_sent_has_submission",
      sql`(${table.state} in ('draft', 'withdrawn')) = (${table.submission} is null) and (${table.submission} is null) = (${table.firstSentOn} is null)`,
    ),
    check(
      "claims_sent_before_what_follows",
      sql`${table.firstSentOn} <= ${table.lastSentOn} and ${table.firstSentOn} <= coalesce(${table.answeredOn}, ${table.firstSentOn}) and ${table.firstSentOn} <= coalesce(${table.paidOn}, ${table.firstSentOn})`,
    ),
    check(
      "claims_answer_after_sending",
      sql`${table.submission} is not null or (${table.approvedCents} is null and ${table.answeredOn} is null and ${table.paidOn} is null and ${table.paidCents} = 0)`,
    ),
    check("claims_money_has_its_day", sql`${table.paidCents} = 0 or ${table.paidOn} is not null`),
    check("claims_approved_within_asked", sql`${table.approvedCents} <= ${table.claimedCents}`),
    check("claims_taken_back_within_paid", sql`${table.clawedBackCents} between 0 and ${table.paidCents}`),
    check("claims_open_within_asked", sql`${table.openCents} <= ${table.claimedCents}`),
    check(
      "claims_waits_for_correction",
      sql`${table.resubmitBy} is null or ${table.state} in ('needs correction', 'rejected')`,
    ),
  ],
);

/** What is asked: of a draft as it was built, and from the first sending on as it was last sent. */
export const claimLines = pgTable(
  "claim_lines",
  {
    unitId: keyColumn("unit_id").notNull(),
    claimId: keyColumn("claim_id").notNull(),
    line: integer("line").notNull(),
    payItem: text("pay_item").$type<"parts" | "labour" | "trip" | "diagnosis" | "handling">().notNull(),
    description: text("description").notNull(),
    quantity: integer("quantity").notNull(),
    claimedCents: centsColumn("claimed_cents").notNull(),
    approvedCents: centsColumn("approved_cents"),
    paidCents: centsColumn("paid_cents").notNull().default(0),
    clawedBackCents: centsColumn("clawed_back_cents").notNull().default(0),
    /** How the amount came about, in words with its numbers. */
    basis: text("basis").notNull(),
    partNumber: text("part_number"),
    invoiceNumber: text("invoice_number"),
    invoiceLine: text("invoice_line"),
  },
  (table) => [
    primaryKey({ columns: [table.unitId, table.claimId, table.line] }),
    foreignKey({
      columns: [table.unitId, table.claimId],
      foreignColumns: [claims.unitId, claims.claimId],
      name: "claim_lines_of_a_claim",
    }),
    index("claim_lines_by_invoice").on(table.invoiceNumber, table.invoiceLine),
    check("claim_lines_known_item", sql`${table.payItem} in ('parts', 'labour', 'trip', 'diagnosis', 'handling')`),
    check("claim_lines_amount_not_negative", sql`${table.claimedCents} >= 0 and ${table.quantity} >= 1`),
    check("claim_lines_approved_within_asked", sql`${table.approvedCents} between 0 and ${table.claimedCents}`),
    check("claim_lines_taken_back_within_paid", sql`${table.clawedBackCents} between 0 and ${table.paidCents}`),
  ],
);
