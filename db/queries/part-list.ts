import { type SQL, sql } from "drizzle-orm";
import type { Day } from "@/lib/calendar/day";
import type { Currency } from "@/lib/domain/money";
import type { StoredPlan } from "@/lib/stock/stored-plan";
import type { Reader } from "../database-types";

/** A part as the list of parts shows it: what is expected, and what lies there now. */
export interface ListedPart {
  readonly partKey: string;
  readonly partNumber: string;
  readonly description: string;
  readonly component: string | undefined;
  readonly componentName: string | undefined;
  readonly usedLastYear: number;
  readonly jobsLastYear: number;
  readonly lastUsedOn: Day | undefined;
  readonly unitCostCents: number | undefined;
  readonly currency: Currency;
  readonly plan: StoredPlan;
  readonly plannedOn: Day;
  /** Shelf and trucks together; undefined where nobody ever entered any. */
  readonly onHand: number | undefined;
  readonly inTrucks: number;
  readonly reserved: number;
  readonly onOrder: number;
  readonly drafted: number;
  readonly nextExpectedOn: Day | undefined;
  readonly hasTerms: boolean;
  readonly lastBuyOn: Day | undefined;
}

/** @param only these parts; all where absent */
export async function loadPartList(db: Reader, only?: readonly string[]): Promise<ListedPart[]> {
  const which: SQL = only === undefined ? sql`true` : sql`o.part_key = any(${sql.param([...only])}::text[])`;
  const rows = await db.rows<PartRow>(sql`
    with stock as (
      select part_key, sum(on_hand)::int as on_hand, coalesce(sum(on_hand) filter (where place <> ''), 0)::int as in_trucks, sum(reserved)::int as reserved
      from stock_levels group by 1),
    coming as (
      select part_key, coalesce(sum(quantity - received) filter (where state = 'ordered'), 0)::int as on_order,
        coalesce(sum(quantity) filter (where state = 'draft'), 0)::int as drafted,
        min(expected_on) filter (where state = 'ordered')::text as next_expected_on
      from part_orders where state in ('draft', 'ordered') group by 1)
    select o.part_key as "partKey", o.part_number as "partNumber", o.description, o.component, c.name as "componentName",
      o.used_last_year as "usedLastYear", o.jobs_last_year as "jobsLastYear", o.last_used_on::text as "lastUsedOn",
      coalesce(t.unit_cost_cents, o.unit_cost_cents)::float8 as "unitCostCents", o.currency, p.plan, p.planned_on::text as "plannedOn", s.on_hand as "onHand",
      coalesce(s.in_trucks, 0) as "inTrucks", coalesce(s.reserved, 0) as reserved, coalesce(g.on_order, 0) as "onOrder",
      coalesce(g.drafted, 0) as drafted, g.next_expected_on as "nextExpectedOn", t.part_key is not null as "hasTerms",
      t.last_buy_on::text as "lastBuyOn"
    from part_outlooks o join part_plans p using (part_key) left join components c on c.key = o.component
      left join stock s using (part_key) left join coming g using (part_key) left join stock_parts t using (part_key)
    where ${which} order by o.part_number`);
  return rows.map((row) => ({
    ...row,
    component: row.component ?? undefined,
    componentName: row.componentName ?? undefined,
    lastUsedOn: row.lastUsedOn ?? undefined,
    unitCostCents: row.unitCostCents ?? undefined,
    onHand: row.onHand ?? undefined,
    nextExpectedOn: row.nextExpectedOn ?? undefined,
    lastBuyOn: row.lastBuyOn ?? undefined,
  }));
}

type Nullable<T> = { [K in keyof T]: undefined extends T[K] ? Exclude<T[K], undefined> | null : T[K] };
type PartRow = Nullable<ListedPart>;

/** How far the outlooks are behind the records. */
export interface OutlookState {
  /** First month of the forecast in force; undefined where none was ever worked out. */
  readonly forecastFrom: Day | undefined;
  readonly plannedOn: Day | undefined;
  readonly workedOutAt: string | undefined;
  readonly marked: number;
  readonly anyUse: boolean;
}

export async function loadOutlookState(db: Reader): Promise<OutlookState> {
  const [row] = await db.rows<{
    from: Day | null;
    planned: Day | null;
    at: string | null;
    marked: number;
    any: boolean;
  }>(sql`
    select (select forecast_from::text from demand_knowledge) as from, (select min(planned_on)::text from part_plans) as planned,
      (select max(worked_out_at)::text from part_outlooks) as at, (select count(*)::int from parts_to_forecast) as marked,
      exists (select from part_lines where role = 'fitted') as any`);
  return {
    forecastFrom: row?.from ?? undefined,
    plannedOn: row?.planned ?? undefined,
    workedOutAt: row?.at ?? undefined,
    marked: row?.marked ?? 0,
    anyUse: row?.any ?? false,
  };
}
