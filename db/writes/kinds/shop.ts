import { parseShop, type Shop } from "@/lib/intake/parse-shop";
import { type ReadColumn, type StagedValue, stagedKind } from "../staging/staged-kind";

const value = (name: string, type: string, from: string, read: (shop: Shop) => StagedValue): ReadColumn<Shop> => ({
  name,
  type,
  from,
  use: "value",
  value: read,
});

/** The company: one document, one row. A change of its grace or its records moves the days of units, so all is counted anew. */
export const shopKind = stagedKind<Shop>({
  kind: "shop",
  parse: parseShop,
  columns: [
    value("name", "text", "name", (shop) => shop.name),
    value("currency", "text", "currency", (shop) => shop.currency),
    value("time_zone", "text", "timeZone", (shop) => shop.timeZone),
    value("territory", "text", "territory", (shop) => shop.territory),
    value("records_from", "date", "recordsFrom", (shop) => shop.recordsFrom),
    value("made_grace_months", "integer", "madeGraceMonths", (shop) => shop.madeGraceMonths),
    value("repeat_days", "integer", "repeatDays", (shop) => shop.repeatDays),
    value("demo", "boolean", "demo", (shop) => shop.demo),
  ],
  derived: ['"only" boolean not null default true'],
  target: { table: "shop", key: ['"only"'], onInsert: {} },
  named: { column: "name", noun: "company" },
  async resolve() {},
  async check() {},
  recounts: "all",
});
