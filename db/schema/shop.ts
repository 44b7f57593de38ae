import { sql } from "drizzle-orm";
import { boolean, check, integer, pgTable, text, varchar } from "drizzle-orm/pg-core";
import type { Currency } from "@/lib/domain/money";
import { batchColumn, dayColumn } from "./columns";

/** The company itself: exactly one row. */
export const shop = pgTable(
  "shop",
  {
    only: boolean("only").primaryKey().default(true),
    name: text("name").notNull(),
    currency: varchar("currency", { length: 3 }).$type<Currency>().notNull(),
    /** IANA name; civil days are days in this zone. */
    timeZone: text("time_zone").notNull(),
    territory: text("territory").notNull(),
    /** Day from which the company's records of failures are complete; null where they always were. */
    recordsFrom: dayColumn("records_from"),
    /** Months from manufacture to service, used for units that have no better date. */
    madeGraceMonths: integer("made_grace_months").notNull(),
    /** Within this many days of a completion the same trouble on the same unit counts as a return. 30: a published rejection list, "second repair within 30 days". */
    repeatDays: integer("repeat_days").notNull().default(30),
    /** True on invented data; every page says so. */
    demo: boolean("demo").notNull(),
    batchId: batchColumn(),
  },
  (table) => [
    check("shop_only_one", sql`${table.only}`),
    check("shop_repeat_days_not_negative", sql`${table.repeatDays} >= 0`),
    check("shop_grace_not_negative", sql`${table.madeGraceMonths} >= 0`),
  ],
);
