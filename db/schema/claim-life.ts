// What was sent to a payer, byte for byte, and everything that happened to a claim. Rows are only ever added.
import { sql } from "drizzle-orm";
import { check, foreignKey, integer, jsonb, pgTable, primaryKey, text, unique, varchar } from "drizzle-orm/pg-core";
import type { ActName, ClaimAct } from "@/lib/claims/life/claim-act";
import type { SendingWay } from "@/lib/claims/life/sending-way";
import type { ManifestEntry } from "@/lib/claims/packet";
import { claims } from "./claims";
import { bytesColumn, dayColumn, instantColumn, keyColumn } from "./columns";

/**
 * One filing as it left. Its bytes can't change without their hash, and the event that sent it holds on to the hash, so
 * an update has nowhere to go: no trigger is needed, which a distributed server would not run.
 */
export const claimSubmissions = pgTable(
  "claim_submissions",
  {
    unitId: keyColumn("unit_id").notNull(),
    claimId: keyColumn("claim_id").notNull(),
    /** 1 for the first filing. */
    submission: integer("submission").notNull(),
    sentOn: dayColumn("sent_on").notNull(),
    way: text("way").$type<SendingWay>().notNull(),
    /** Number or name under which it was handed in; empty where there is none. */
    reference: text("reference").notNull(),
    /** JSON text, UTF-8, as lib/claims/life/sent-content.ts makes it. */
    content: bytesColumn("content").notNull(),
    contentSha256: varchar("content_sha256", { length: 64 }).notNull(),
    /** Every file that went with it, with its hash. */
    manifest: jsonb("manifest").$type<readonly ManifestEntry[]>().notNull(),
    /** Checks that failed, each with the reason for sending all the same. */
    overrides: jsonb("overrides").$type<readonly CheckOverride[]>().notNull(),
    at: instantColumn("at").notNull(),
  },
  (table) => [
    primaryKey({ columns: [table.unitId, table.claimId, table.submission] }),
    unique("claim_submissions_with_hash").on(table.unitId, table.claimId, table.submission, table.contentSha256),
    foreignKey({
      columns: [table.unitId, table.claimId],
      foreignColumns: [claims.unitId, claims.claimId],
      name: "claim_submissions_of_a_claim",
    }),
    check("claim_submissions_count_from_one", sql`${table.submission} >= 1`),
    check("claim_submissions_hashed", sql`encode(sha256(${table.content}), 'hex') = ${table.contentSha256}`),
    check("claim_submissions_known_way", sql`${table.way} in ('portal', 'email', 'post', 'other')`),
  ],
);

export interface CheckOverride {
  readonly check: string;
  readonly found: string;
  readonly reason: string;
}

/** Who did what when and why. An act after sending names the submission that it is about. */
export const claimEvents = pgTable(
  "claim_events",
  {
    unitId: keyColumn("unit_id").notNull(),
    claimId: keyColumn("claim_id").notNull(),
    /** Counts from 1 within the claim; order goes by it, never by the clock. */
    event: integer("event").notNull(),
    at: instantColumn("at").notNull(),
    by: text("by").notNull(),
    what: text("what").$type<ActName>().notNull(),
    act: jsonb("act").$type<ClaimAct>().notNull(),
    note: text("note").notNull(),
    submission: integer("submission"),
    /** Only of the act that sent it. */
    sentSha256: varchar("sent_sha256", { length: 64 }),
  },
  (table) => [
    primaryKey({ columns: [table.unitId, table.claimId, table.event] }),
    foreignKey({
      columns: [table.unitId, table.claimId],
      foreignColumns: [claims.unitId, claims.claimId],
      name: "claim_events_of_a_claim",
    }),
    foreignKey({
      columns: [table.unitId, table.claimId, table.submission],
      foreignColumns: [claimSubmissions.unitId, claimSubmissions.claimId, claimSubmissions.submission],
      name: "claim_events_about_a_submission",
    }),
    foreignKey({
      columns: [table.unitId, table.claimId, table.submission, table.sentSha256],
      foreignColumns: [
        claimSubmissions.unitId,
        claimSubmissions.claimId,
        claimSubmissions.submission,
        claimSubmissions.contentSha256,
      ],
      name: "claim_events_hold_the_hash",
    }),
    unique("claim_events_send_once").on(table.unitId, table.claimId, table.sentSha256),
    check("claim_events_first_is_built", sql`(${table.event} = 1) = (${table.what} = 'built') and ${table.event} >= 1`),
    check("claim_events_act_agrees", sql`${table.act} ->> 'what' is not distinct from ${table.what}`),
    check(
      "claim_events_sent_before_what_follows",
      sql`(${table.what} in ('built', 'withdrawn')) = (${table.submission} is null)`,
    ),
    check(
      "claim_events_sending_has_hash",
      sql`(${table.what} = 'sent') = (${table.sentSha256} is not null) and (${table.what} <> 'sent' or ${table.act} ->> 'sha256' is not distinct from ${table.sentSha256})`,
    ),
    check(
      "claim_events_payment_has_reference",
      sql`${table.what} not in ('paid', 'clawed back') or btrim(coalesce(${table.act} ->> 'reference', '')) <> ''`,
    ),
    check(
      "claim_events_reason_where_due",
      sql`${table.what} not in ('withdrawn', 'written off') or btrim(coalesce(${table.act} ->> 'reason', '')) <> ''`,
    ),
    check("claim_events_by_somebody", sql`btrim(${table.by}) <> ''`),
  ],
);
