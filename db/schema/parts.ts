// The catalogue of parts: what supersedes what, and what each cost when.
import { sql } from "drizzle-orm";
import { check, foreignKey, index, pgTable, primaryKey, text, varchar } from "drizzle-orm/pg-core";
import type { Currency } from "@/lib/domain/money";
import { components } from "./catalogue";
import { batchColumn, centsColumn, dayColumn, keyColumn } from "./columns";

export const parts = pgTable(
  "parts",
  {
    /** Made from maker and normalised number. */
    partId: keyColumn("part_id").primaryKey(),
    maker: text("maker").notNull(),
    partNumber: text("part_number").notNull(),
    /** Upper case, letters and digits only. */
    normalised: text("normalised").notNull(),
    description: text("description").notNull(),
    component: varchar("component", { length: 60 }).references(() => components.key),
    /** Older number that it stands in for, and newer number that stands in for it. */
    replaces: text("replaces"),
    supersededBy: text("superseded_by"),
    batchId: batchColumn(),
  },
  (table) => [
    index("parts_by_number").on(table.normalised),
    check("parts_superseded_by_another", sql`${table.supersededBy} <> ${table.partNumber}`),
  ],
);

/** What a part cost, and was listed at, from which day on. */
export const partPrices = pgTable(
  "part_prices",
  {
    partId: keyColumn("part_id").notNull(),
    effectiveOn: dayColumn("effective_on").notNull(),
    listCents: centsColumn("list_cents"),
    costCents: centsColumn("cost_cents"),
    currency: varchar("currency", { length: 3 }).$type<Currency>().notNull(),
    batchId: batchColumn(),
  },
  (table) => [
    primaryKey({ columns: [table.partId, table.effectiveOn] }),
    foreignKey({ columns: [table.partId], foreignColumns: [parts.partId], name: "part_prices_of_a_part" }),
    check("part_prices_some", sql`${table.listCents} is not null or ${table.costCents} is not null`),
    check("part_prices_not_negative", sql`${table.listCents} >= 0 and ${table.costCents} >= 0`),
  ],
);
