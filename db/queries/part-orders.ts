import { sql } from "drizzle-orm";
import type { Day } from "@/lib/calendar/day";
import type { Currency } from "@/lib/domain/money";
import type { OrderState } from "@/lib/domain/stock";
import type { Reader } from "../database-types";

/** One line of the order list. */
export interface OrderLine {
  readonly orderId: number;
  readonly partKey: string;
  readonly partNumber: string;
  readonly description: string;
  readonly supplier: string;
  readonly quantity: number;
  readonly received: number;
  readonly unitCostCents: number | undefined;
  readonly currency: Currency;
  readonly state: OrderState;
  readonly orderedOn: Day | undefined;
  readonly expectedOn: Day | undefined;
  readonly closedOn: Day | undefined;
  readonly why: string;
  readonly note: string;
  readonly version: number;
}

/** Lines that are open, and those that were closed in the last so many days. */
export async function loadOrderList(db: Reader, closedSince: Day): Promise<readonly OrderLine[]> {
  return await lines(db, sql`state in ('draft', 'ordered') or closed_on >= ${closedSince}::date`);
}

export async function loadOrderLine(db: Reader, orderId: number): Promise<OrderLine | undefined> {
  return (await lines(db, sql`order_id = ${orderId}`))[0];
}

export interface OrderEvent {
  readonly version: number;
  readonly at: string;
  readonly by: string;
  readonly what: string;
  readonly detail: Readonly<Record<string, unknown>>;
}

export async function loadOrderEvents(db: Reader, orderId: number): Promise<readonly OrderEvent[]> {
  return await db.rows<Record<string, unknown> & OrderEvent>(sql`
    select version, at::text as at, by, what, detail from part_order_events where order_id = ${orderId} order by version`);
}

type Nullable<T> = { [K in keyof T]: undefined extends T[K] ? Exclude<T[K], undefined> | null : T[K] };

async function lines(db: Reader, which: ReturnType<typeof sql>): Promise<readonly OrderLine[]> {
  const rows = await db.rows<Nullable<OrderLine>>(sql`
    select order_id as "orderId", part_key as "partKey", part_number as "partNumber", description, supplier, quantity, received,
      unit_cost_cents::float8 as "unitCostCents", currency, state, ordered_on::text as "orderedOn", expected_on::text as "expectedOn",
      closed_on::text as "closedOn", why, note, version
    from part_orders where ${which}
    order by case state when 'draft' then 0 when 'ordered' then 1 else 2 end, supplier, expected_on nulls last, part_number, order_id`);
  return rows.map((row) => ({
    ...row,
    unitCostCents: row.unitCostCents ?? undefined,
    orderedOn: row.orderedOn ?? undefined,
    expectedOn: row.expectedOn ?? undefined,
    closedOn: row.closedOn ?? undefined,
  }));
}
