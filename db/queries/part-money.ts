import { sql } from "drizzle-orm";
import type { Day } from "@/lib/calendar/day";
import type { StoredTotal } from "@/lib/forecast/stored-total";
import type { Reader } from "../database-types";
import { onShelf } from "./part-credits";

export interface ComponentTotal {
  /** `all`, a component's key, or `none`. */
  readonly key: string;
  readonly name: string | undefined;
  readonly total: StoredTotal;
}

export async function loadDemandTotals(db: Reader): Promise<readonly ComponentTotal[]> {
  const rows = await db.rows<{ key: string; name: string | null; total: StoredTotal }>(sql`
    select t.key, c.name, t.total from demand_totals t left join components c using (key) order by c.name nulls last, t.key`);
  return rows.map(({ key, name, total }) => ({ key, name: name ?? undefined, total }));
}

/** What payers paid for parts on the jobs of one week, in cents; weeks are counted from the first day asked for. */
export interface WarrantyWeek {
  readonly week: number;
  /** Cost of all parts fitted, and what was paid for parts of claims on the same jobs. */
  readonly partsCents: number;
  readonly paidCents: number;
  /** Covered parts that nobody has claimed on those jobs. */
  readonly unclaimedCents: number;
}

/** Week by week, of jobs completed from a day until before another. */
export async function loadWarrantyWeeks(db: Reader, from: Day, until: Day): Promise<readonly WarrantyWeek[]> {
  return await db.rows<Record<string, unknown> & WarrantyWeek>(sql`
    with jobs_then as (select unit_id, job_id, (completed_on - ${from}::date) / 7 as week from jobs
      where status = 'closed' and completed_on >= ${from}::date and completed_on < ${until}::date),
    each as (
      select week, p.quantity * p.unit_cost_cents as parts, 0 as paid, 0 as unclaimed from jobs_then join part_lines p using (unit_id, job_id)
        join shop on shop.currency = p.currency where p.role = 'fitted'
      union all select week, 0, l.paid_cents - l.clawed_back_cents, 0 from jobs_then join claims c using (unit_id, job_id)
        join claim_lines l using (unit_id, claim_id) where l.pay_item = 'parts' and c.state <> 'withdrawn'
      union all select week, 0, 0, w.parts_cents from jobs_then join unclaimed_work w using (unit_id, job_id) where w.claim_number is null)
    select week, sum(parts)::float8 as "partsCents", sum(paid)::float8 as "paidCents", coalesce(sum(unclaimed), 0)::float8 as "unclaimedCents"
    from each group by 1 order by 1`);
}

/** Money in parts on claims that were sent and are not paid yet, and failed parts that are still held for a payer. */
export interface PartCredits {
  readonly awaitedCents: number;
  readonly claims: number;
  /** Credits for parts that were sent back and never came. */
  readonly missingCents: number;
  readonly missing: number;
  readonly held: readonly HeldPart[];
}

export interface HeldPart {
  readonly claimNumber: string;
  readonly payer: string;
  readonly keepUntil: Day;
  readonly openPartsCents: number;
  readonly parts: string;
}

/** @param today parts held until before it may go */
export async function loadPartCredits(db: Reader, today: Day): Promise<PartCredits> {
  const [sums] = await db.rows<{ awaited: number; claims: number; missing_cents: number; missing: number }>(sql`
    with open as (
      select c.unit_id, c.claim_id, sum(greatest(0, coalesce(l.approved_cents, l.claimed_cents) - l.paid_cents)) as cents
      from claims c join claim_lines l using (unit_id, claim_id)
      where l.pay_item = 'parts' and c.state in ('sent', 'received', 'approved', 'short-paid', 'appealed', 'needs correction') group by 1, 2)
    select coalesce(sum(cents), 0)::float8 as awaited, count(*) filter (where cents > 0)::int as claims,
      coalesce((select sum(amount_cents) from unclaimed_work where leak = 'part credit'), 0)::float8 as missing_cents,
      (select count(*)::int from unclaimed_work where leak = 'part credit') as missing
    from open`);
  const held = await db.rows<Record<string, unknown> & HeldPart>(sql`
    select c.claim_number as "claimNumber", c.payer, c.keep_part_until::text as "keepUntil",
      coalesce(sum(greatest(0, coalesce(l.approved_cents, l.claimed_cents) - l.paid_cents)), 0)::float8 as "openPartsCents",
      coalesce(string_agg(l.quantity || ' × ' || coalesce(l.part_number, l.description), ', ' order by l.line), '') as parts
    from claims c join claim_lines l on l.unit_id = c.unit_id and l.claim_id = c.claim_id and l.pay_item = 'parts'
    where c.keep_part_until >= ${today}::date and c.state not in ('draft', 'withdrawn') and ${onShelf}
    group by c.unit_id, c.claim_id, c.claim_number, c.payer, c.keep_part_until order by c.keep_part_until, c.claim_number`);
  return {
    awaitedCents: sums?.awaited ?? 0,
    claims: sums?.claims ?? 0,
    missingCents: sums?.missing_cents ?? 0,
    missing: sums?.missing ?? 0,
    held,
  };
}

/** Money that lies in stock, at today's cost, by place. */
export interface TiedUp {
  readonly place: string;
  readonly pieces: number;
  readonly cents: number;
  readonly partsWithoutCost: number;
}

export async function loadTiedUp(db: Reader): Promise<readonly TiedUp[]> {
  return await db.rows<Record<string, unknown> & TiedUp>(sql`
    select l.place, sum(greatest(0, l.on_hand))::int as pieces,
      coalesce(sum(greatest(0, l.on_hand) * coalesce(t.unit_cost_cents, o.unit_cost_cents)), 0)::float8 as cents,
      count(*) filter (where l.on_hand > 0 and coalesce(t.unit_cost_cents, o.unit_cost_cents) is null)::int as "partsWithoutCost"
    from stock_levels l left join part_outlooks o using (part_key) left join stock_parts t using (part_key)
    group by 1 order by 1`);
}

/** What is on the way: ordered and not yet come. */
export async function loadOnTheWayCents(db: Reader): Promise<number> {
  const [row] = await db.rows<{ cents: number }>(sql`
    select coalesce(sum((quantity - received) * unit_cost_cents), 0)::float8 as cents from part_orders where state = 'ordered'`);
  return row?.cents ?? 0;
}
