// Coverage policies: what a payer promises, as dated versions that are never edited in place.
import { sql } from "drizzle-orm";
import { check, index, integer, jsonb, pgTable, primaryKey, text, unique, varchar } from "drizzle-orm/pg-core";
import type { Currency } from "@/lib/domain/money";
import { makers } from "./catalogue";
import { batchColumn, centsColumn, dayColumn, instantColumn, keyColumn } from "./columns";
import { units } from "./register";

export const policies = pgTable(
  "policies",
  {
    policyId: integer("policy_id").primaryKey().generatedAlwaysAsIdentity(),
    /** The same in every version. */
    key: text("key").notNull(),
    /** Maker whose units it covers; empty where it covers any maker, as a contract or the shop's own guarantee does. */
    makerId: integer("maker_id").references(() => makers.makerId),
    name: text("name").notNull(),
    version: integer("version").notNull(),
    /** Units sold in [effectiveFrom, effectiveTo] fall under this version; an open end is null. */
    effectiveFrom: dayColumn("effective_from").notNull(),
    effectiveTo: dayColumn("effective_to"),
    /** The whole policy as lib/domain/policy.ts types it, parsed at the border; kept whole so that an old claim can quote it. */
    document: jsonb("document").notNull(),
    documentSha256: varchar("document_sha256", { length: 64 }).notNull(),
    sourceDocument: text("source_document").notNull(),
    approvedBy: text("approved_by").notNull(),
    publishedAt: instantColumn("published_at").notNull(),
    /** Who published it here; empty where a file brought it. */
    publishedBy: text("published_by"),
    /** Last sale date it governs because a later version follows; the document itself stays as it was approved. */
    closedOn: dayColumn("closed_on"),
    /** A retired version decides nothing any more; claims that it decided keep it. */
    retiredAt: instantColumn("retired_at"),
    retiredBy: text("retired_by"),
    retiredReason: text("retired_reason"),
    batchId: batchColumn(),
  },
  (table) => [
    unique("policies_one_version").on(table.key, table.version),
    check("policies_dates_in_order", sql`${table.effectiveFrom} <= ${table.effectiveTo}`),
    check("policies_version_counts_from_one", sql`${table.version} >= 1`),
    check("policies_closed_in_order", sql`${table.effectiveFrom} <= ${table.closedOn}`),
    check(
      "policies_retired_by_somebody",
      sql`(${table.retiredAt} is null) = (${table.retiredBy} is null) and (${table.retiredAt} is null) = (${table.retiredReason} is null) and btrim(${table.retiredBy}) <> '' and btrim(${table.retiredReason}) <> ''`,
    ),
  ],
);

/** A version that somebody is writing. What it says may still be incomplete or wrong; only a whole one is published. */
export const policyDrafts = pgTable(
  "policy_drafts",
  {
    draftId: integer("draft_id").primaryKey().generatedAlwaysAsIdentity(),
    /** Policy and version that it was begun from; empty where it began from nothing. */
    basedOn: integer("based_on").references(() => policies.policyId),
    document: jsonb("document").notNull(),
    savedAt: instantColumn("saved_at").notNull(),
    savedBy: text("saved_by").notNull(),
    /** Counts every saving; whoever saves says which one was seen. */
    revision: integer("revision").notNull(),
  },
  (table) => [check("policy_drafts_revision_counts_from_one", sql`${table.revision} >= 1`)],
);

/** Service contracts, one unit each. */
export const contracts = pgTable(
  "contracts",
  {
    unitId: keyColumn("unit_id")
      .notNull()
      .references(() => units.unitId),
    contractNumber: text("contract_number").notNull(),
    /** The key of the policy with its terms, or the name on the paper. */
    plan: text("plan"),
    soldOn: dayColumn("sold_on"),
    startsOn: dayColumn("starts_on").notNull(),
    endsOn: dayColumn("ends_on").notNull(),
    cancelledOn: dayColumn("cancelled_on"),
    waitDays: integer("wait_days").notNull(),
    deductibleCents: centsColumn("deductible_cents"),
    limitCents: centsColumn("limit_cents"),
    currency: varchar("currency", { length: 3 }).$type<Currency>().notNull(),
    /** The holder's own reference, not a name. */
    holder: text("holder"),
    batchId: batchColumn(),
  },
  (table) => [
    primaryKey({ columns: [table.unitId, table.contractNumber] }),
    index("contracts_by_number").on(table.contractNumber),
    check("contracts_in_order", sql`${table.startsOn} <= ${table.endsOn} and ${table.soldOn} <= ${table.endsOn}`),
    check(
      "contracts_not_negative",
      sql`${table.waitDays} >= 0 and ${table.deductibleCents} >= 0 and ${table.limitCents} >= 0`,
    ),
  ],
);
