import { sql } from "drizzle-orm";
import type { Day } from "@/lib/calendar/day";
import type { Currency } from "@/lib/domain/money";
import type { Criticality } from "@/lib/domain/stock";
import type { BuyingTerms } from "@/lib/stock/buying-terms";
import type { Reader } from "../database-types";

/** What somebody said of buying a part. */
export interface PartTerms extends BuyingTerms {
  readonly partKey: string;
  readonly partNumber: string;
  readonly criticality: Criticality;
  readonly supplier: string;
  readonly unitCostCents: number | undefined;
  readonly currency: Currency;
  readonly supersededBy: string | undefined;
  readonly lastBuyOn: Day | undefined;
  readonly setBy: string;
  readonly version: number;
}

/** @param only these parts; all of which something was said where absent */
export async function loadPartTerms(db: Reader, only?: readonly string[]): Promise<ReadonlyMap<string, PartTerms>> {
  const which = only === undefined ? sql`true` : sql`part_key = any(${sql.param([...only])}::text[])`;
  const rows = await db.rows<TermsRow>(sql`
    select part_key as "partKey", part_number as "partNumber", lead_days as "leadDays", review_days as "reviewDays", pack,
      order_cost_cents::float8 as "orderCostCents", holding_percent as "holdingPercent", criticality, short_one_in as "shortOneIn",
      supplier, unit_cost_cents::float8 as "unitCostCents", currency, superseded_by as "supersededBy", last_buy_on::text as "lastBuyOn",
      set_by as "setBy", version
    from stock_parts where ${which}`);
  return new Map(
    rows.map((row) => [
      row.partKey,
      {
        ...row,
        unitCostCents: row.unitCostCents ?? undefined,
        supersededBy: row.supersededBy ?? undefined,
        lastBuyOn: row.lastBuyOn ?? undefined,
      },
    ]),
  );
}

type Nullable<T> = { [K in keyof T]: undefined extends T[K] ? Exclude<T[K], undefined> | null : T[K] };
type TermsRow = Nullable<PartTerms>;

/** Days from order to the receipt that completed it, for orders of these parts in the last three years, oldest first. */
export async function loadOrderDays(
  db: Reader,
  today: Day,
  only?: readonly string[],
): Promise<ReadonlyMap<string, readonly number[]>> {
  const which = only === undefined ? sql`true` : sql`part_key = any(${sql.param([...only])}::text[])`;
  const rows = await db.rows<{ part_key: string; days: number }>(sql`
    select part_key, closed_on - ordered_on as days from part_orders
    where state = 'received' and closed_on >= ordered_on and closed_on > ${today}::date - interval '3 years' and ${which} order by closed_on, order_id`);
  const found = new Map<string, number[]>();
  for (const { part_key, days } of rows) found.set(part_key, [...(found.get(part_key) ?? []), days]);
  return found;
}
