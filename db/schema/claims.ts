// Claims: the request to a payer for one unit on one job, with what was asked and on which grounds.
import { sql } from "drizzle-orm";
import {
  check,
  foreignKey,
  integer,
  jsonb,
  pgTable,
  primaryKey,
  text,
  unique,
  uniqueIndex,
  varchar,
} from "drizzle-orm/pg-core";
import type { Currency } from "@/lib/domain/money";
import { centsColumn, dayColumn, instantColumn, keyColumn } from "./columns";
import { policies } from "./coverage";
import { jobs } from "./jobs";

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
    state: text("state").$type<"draft" | "withdrawn">().notNull(),
    currency: varchar("currency", { length: 3 }).$type<Currency>().notNull(),
    claimedCents: centsColumn("claimed_cents").notNull(),
    fileBy: dayColumn("file_by"),
    /** The decision and the evidence check as they stood when the claim was built. */
    decision: jsonb("decision").notNull(),
    evidence: jsonb("evidence").notNull(),
    builtAt: instantColumn("built_at").notNull(),
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
    check("claims_amount_not_negative", sql`${table.claimedCents} >= 0`),
    check("claims_known_state", sql`${table.state} in ('draft', 'withdrawn')`),
    check("claims_version_counts_from_one", sql`${table.version} >= 1`),
  ],
);

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
    check("claim_lines_known_item", sql`${table.payItem} in ('parts', 'labour', 'trip', 'diagnosis', 'handling')`),
    check("claim_lines_amount_not_negative", sql`${table.claimedCents} >= 0 and ${table.quantity} >= 1`),
  ],
);

/** Who did what when; rows are only ever added. */
export const claimEvents = pgTable(
  "claim_events",
  {
    unitId: keyColumn("unit_id").notNull(),
    claimId: keyColumn("claim_id").notNull(),
    event: integer("event").notNull(),
    at: instantColumn("at").notNull(),
    what: text("what").notNull(),
    note: text("note").notNull(),
  },
  (table) => [
    primaryKey({ columns: [table.unitId, table.claimId, table.event] }),
    foreignKey({
      columns: [table.unitId, table.claimId],
      foreignColumns: [claims.unitId, claims.claimId],
      name: "claim_events_of_a_claim",
    }),
  ],
);
