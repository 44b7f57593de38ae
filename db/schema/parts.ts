// The catalogue of parts: what each is, what supersedes what, and what it cost, from which day on.
import { sql } from "drizzle-orm";
import { check, index, pgTable, primaryKey, text, varchar } from "drizzle-orm/pg-core";
import type { Currency } from "@/lib/domain/money";
import { components } from "./catalogue";
import { batchColumn, centsColumn, dayColumn, keyColumn } from "./columns";

/** What holds of a part from a day on. The entry in force is the latest that has begun; the earlier ones are its history. */
export const parts = pgTable(
  "parts",
  {
    /** Made from maker and normalised number. */
    partId: keyColumn("part_id").notNull(),
    /** 0001-01-01 where nobody said from when. */
    effectiveOn: dayColumn("effective_on").notNull(),
    /** Empty where nobody said whose number it is. */
    maker: text("maker").notNull(),
    partNumber: text("part_number").notNull(),
    /** Upper case, letters and digits only. */
    normalised: text("normalised").notNull(),
    description: text("description").notNull(),
    component: varchar("component", { length: 60 }).references(() => components.key),
    /** Older number that it stands in for, and newer number that stands in for it. */
    replaces: text("replaces"),
    supersededBy: text("superseded_by"),
    listCents: centsColumn("list_cents"),
    costCents: centsColumn("cost_cents"),
    currency: varchar("currency", { length: 3 }).$type<Currency>().notNull(),
    batchId: batchColumn(),
  },
  (table) => [
    primaryKey({ columns: [table.partId, table.effectiveOn] }),
    index("parts_by_number").on(table.normalised),
    check("parts_superseded_by_another", sql`${table.supersededBy} <> ${table.partNumber}`),
    check("parts_prices_not_negative", sql`${table.listCents} >= 0 and ${table.costCents} >= 0`),
  ],
);
