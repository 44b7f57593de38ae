// What is expected of each part, worked out ahead of the pages that show it. Everything here follows from jobs, units,
// catalogue and the month, and is worked out anew, never adjusted.
import { sql } from "drizzle-orm";
import { boolean, check, integer, jsonb, pgTable, text, varchar } from "drizzle-orm/pg-core";
import type { Currency } from "@/lib/domain/money";
import type { StoredKnowledge } from "@/lib/forecast/stored-knowledge";
import type { StoredOutlook } from "@/lib/forecast/stored-outlook";
import type { StoredTotal } from "@/lib/forecast/stored-total";
import type { StoredPlan } from "@/lib/stock/stored-plan";
import { bytesColumn, centsColumn, dayColumn, instantColumn } from "./columns";

/** One part by its current number, with the history of all numbers that it took the place of. */
export const partOutlooks = pgTable(
  "part_outlooks",
  {
    partKey: text("part_key").primaryKey(),
    partNumber: text("part_number").notNull(),
    description: text("description").notNull(),
    component: varchar("component", { length: 60 }),
    /** As jobs spell it and its predecessors. */
    spellings: jsonb("spellings").$type<readonly string[]>().notNull(),
    /** First month of the history, and first month of the forecast. */
    historyFrom: dayColumn("history_from").notNull(),
    forecastFrom: dayColumn("forecast_from").notNull(),
    history: jsonb("history").$type<readonly number[]>().notNull(),
    usedLastYear: integer("used_last_year").notNull(),
    jobsLastYear: integer("jobs_last_year").notNull(),
    lastUsedOn: dayColumn("last_used_on"),
    unitCostCents: centsColumn("unit_cost_cents"),
    currency: varchar("currency", { length: 3 }).$type<Currency>().notNull(),
    outlook: jsonb("outlook").$type<StoredOutlook>().notNull(),
    /** Possible futures: whole numbers of two bytes, future by future, month by month. */
    futures: bytesColumn("futures").notNull(),
    /** Hash of all that it was worked out from: equal versions are equal outlooks. */
    dataVersion: text("data_version").notNull(),
    workedOutAt: instantColumn("worked_out_at").notNull(),
  },
  (table) => [check("part_outlooks_versioned", sql`${table.dataVersion} <> ''`)],
);

/** What all parts together say about how demand lasts; learnt once a month. One row. */
export const demandKnowledge = pgTable("demand_knowledge", {
  only: boolean("only").primaryKey().default(true),
  forecastFrom: dayColumn("forecast_from").notNull(),
  knowledge: jsonb("knowledge").$type<StoredKnowledge>().notNull(),
  learntAt: instantColumn("learnt_at").notNull(),
});

/** Sums over parts, added up future by future: `all`, or a component by its key, or `none` for parts without one. */
export const demandTotals = pgTable("demand_totals", {
  key: text("key").primaryKey(),
  currency: varchar("currency", { length: 3 }).$type<Currency>().notNull(),
  total: jsonb("total").$type<StoredTotal>().notNull(),
  dataVersion: text("data_version").notNull(),
});

/** Numbers, as jobs spell them, whose use changed since they were last looked at. */
export const partsToForecast = pgTable("parts_to_forecast", {
  partNumber: text("part_number").primaryKey(),
});

/** What follows for ordering one part, from its outlook and what is said of buying it. Stock itself is read when it is shown. */
export const partPlans = pgTable("part_plans", {
  partKey: text("part_key")
    .primaryKey()
    .references(() => partOutlooks.partKey),
  plannedOn: dayColumn("planned_on").notNull(),
  plan: jsonb("plan").$type<StoredPlan>().notNull(),
});
