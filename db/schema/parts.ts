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
    /** Number of the part that is delivered in its stead. */
    supersededBy: text("superseded_by"),
    batchId: batchColumn(),
  },
  (table) => [
    index("parts_by_number").on(table.normalised),
    check("parts_superseded_by_another", sql`${table.supersededBy} <> ${table.partNumber}`),
  ],
);

export const partPrices = pgTable(
  "part_prices",
  {
    partId: keyColumn("part_id").notNull(),
    /** First day of this price. */
    pricedOn: dayColumn("priced_on").notNull(),
    /** Whose price; empty where nobody is named. */
    distributor: text("distributor").notNull(),
    costCents: centsColumn("cost_cents").notNull(),
    currency: varchar("currency", { length: 3 }).$type<Currency>().notNull(),
    batchId: batchColumn(),
  },
  (table) => [
    primaryKey({ columns: [table.partId, table.pricedOn, table.distributor] }),
    foreignKey({ columns: [table.partId], foreignColumns: [parts.partId], name: "part_prices_of_a_part" }),
    check("part_prices_not_negative", sql`${table.costCents} >= 0`),
  ],
);
