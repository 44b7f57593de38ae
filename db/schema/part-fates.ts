// Failed parts once they left the shelf. Entries are only ever added; the last one of a part counts.
import { sql } from "drizzle-orm";
import { check, foreignKey, integer, pgTable, primaryKey, text } from "drizzle-orm/pg-core";
import type { PartFate } from "@/lib/claims/recovery/part-fate";
import { claims } from "./claims";
import { dayColumn, instantColumn, keyColumn } from "./columns";

export const partFates = pgTable(
  "part_fates",
  {
    unitId: keyColumn("unit_id").notNull(),
    claimId: keyColumn("claim_id").notNull(),
    /** Line of the claim that asks for the part. */
    line: integer("line").notNull(),
    /** Counts from 1 within the line. */
    entry: integer("entry").notNull(),
    /** `on shelf`: what was entered before was a mistake. */
    fate: text("fate").$type<PartFate | "on shelf">().notNull(),
    onDay: dayColumn("on_day").notNull(),
    /** Number of its tag or of the parcel; empty where none was written down. */
    tag: text("tag").notNull(),
    by: text("by").notNull(),
    reason: text("reason").notNull(),
    at: instantColumn("at").notNull(),
  },
  (table) => [
    primaryKey({ columns: [table.unitId, table.claimId, table.line, table.entry] }),
    foreignKey({
      columns: [table.unitId, table.claimId],
      foreignColumns: [claims.unitId, claims.claimId],
      name: "part_fates_of_a_claim",
    }),
    check("part_fates_known_fate", sql`${table.fate} in ('sent back', 'scrapped', 'on shelf')`),
    check("part_fates_entered_by_somebody", sql`btrim(${table.by}) <> ''`),
    check("part_fates_count_from_one", sql`${table.entry} >= 1`),
  ],
);
