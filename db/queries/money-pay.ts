import { sql } from "drizzle-orm";
import type { Day } from "@/lib/calendar/day";
import { unfiledLeaks } from "@/lib/claims/leaks/leak";
import type { PayerWork, WorkAmounts } from "@/lib/claims/recovery/pay-against-retail";
import type { Currency } from "@/lib/domain/money";
import type { ProductType } from "@/lib/domain/product-type";
import type { Reader } from "../database-types";

export interface PayFacts {
  /** What payers' terms pay for the work of a repair: what was asked of them, and what could be. */
  readonly paid: readonly PayerWork[];
  /** What customers were charged for the work of a repair. */
  readonly retail: readonly WorkAmounts[];
}

/** Amounts for the work of repairs completed from this day on: labour and trip together, counted amount by amount. */
export async function loadPayFacts(db: Reader, from: Day): Promise<PayFacts> {
  const paid = await db.rows<Row & { payer: string }>(sql`
    select w.payer, m.product_type, w.component, w.currency, w.cents::text, count(*)::int as jobs from (
      select c.payer, c.unit_id, j.component, c.currency, sum(l.claimed_cents) as cents
      from claims c join claim_lines l using (unit_id, claim_id) join jobs j using (unit_id, job_id)
      where c.state <> 'withdrawn' and j.completed_on >= ${from} and j.cause = 'component' and l.pay_item in ('labour', 'trip') group by c.unit_id, c.claim_id, j.job_id, c.payer, j.component, c.currency
      union all
      select payer, unit_id, component, currency, labour_cents + trip_cents from unclaimed_work
      where leak = any(${sql.param([...unfiledLeaks])}::text[]) and completed_on >= ${from} and labour_cents > 0
    ) w join units u using (unit_id) join models m using (model_id)
    where w.component is not null and w.cents > 0 group by 1, 2, 3, 4, 5`);
  const retail = await db.rows<Row>(sql`
    select m.product_type, j.component, j.currency, (j.labour_cents + coalesce(j.trip_cents, 0))::text as cents, count(*)::int as jobs
    from jobs j join units u using (unit_id) join models m using (model_id)
    where j.status = 'closed' and j.payer = 'customer' and j.cause = 'component' and j.component is not null and j.labour_cents > 0
      and j.completed_on >= ${from} group by 1, 2, 3, 4`);
  return {
    paid: grouped(paid).map((rows) => ({ payer: rows[0].payer, ...workOf(rows) })),
    retail: grouped(retail).map(workOf),
  };
}

type Row = {
  payer?: string;
  product_type: ProductType;
  component: string;
  currency: Currency;
  cents: string;
  jobs: number;
};

type Group<R> = readonly [R, ...R[]];

function grouped<R extends Row>(rows: readonly R[]): readonly Group<R>[] {
  const groups = new Map<string, [R, ...R[]]>();
  for (const row of rows) {
    const key = `${row.payer}|${row.product_type}|${row.component}|${row.currency}`;
    const group = groups.get(key);
    if (group === undefined) groups.set(key, [row]);
    else group.push(row);
  }
  return [...groups.values()];
}

function workOf(rows: Group<Row>): WorkAmounts {
  const [{ product_type: productType, component, currency }] = rows;
  return {
    productType,
    component,
    currency,
    amounts: rows.map(({ cents, jobs }) => ({ value: Number(cents), count: jobs })),
  };
}
