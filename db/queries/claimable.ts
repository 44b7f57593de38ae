import { type SQL, sql } from "drizzle-orm";
import { type Day, daysBetween } from "@/lib/calendar/day";
import { unfiledLeaks } from "@/lib/claims/leaks/leak";
import type { Currency } from "@/lib/domain/money";
import type { Reader } from "../database-types";

/** Covered work of one job with one payer that nobody has claimed and that can still be filed. */
export interface ClaimableJob {
  readonly jobNumber: string;
  readonly unitId: string;
  readonly serial: string | undefined;
  readonly component: string | undefined;
  readonly completedOn: Day;
  readonly policyKey: string;
  readonly payer: string;
  readonly lastDay: Day;
  readonly daysLeft: number;
  readonly cents: number;
  readonly currency: Currency;
  /** What has to be added before it can be filed. */
  readonly missing: readonly string[];
}

export interface ClaimableFilter {
  readonly payer?: string | undefined;
  /** Last day to file, at most. */
  readonly until?: Day | undefined;
}

interface Span {
  readonly offset: number;
  readonly limit: number;
}

/** The most urgent first. It was concluded when the job, its unit or the terms last changed; only the day is today's. */
export async function loadClaimable(
  db: Reader,
  today: Day,
  filter: ClaimableFilter = {},
  { offset, limit }: Span = { offset: 0, limit: 500 },
): Promise<ClaimableJob[]> {
  // All rows up to the last day on the page are enough to tell which stand there; units and words come only to those.
  const rows = await db.rows<Row>(sql`
    with urgent as materialized (
      select unit_id, job_id, policy_id, leak, due_on from unclaimed_work w where ${fits(today, filter)}
      order by due_on fetch first (${offset + limit}::integer) rows with ties),
    shown as materialized (
      select w.unit_id, w.job_id, w.policy_id, w.leak, j.job_number, p.key
      from urgent w join jobs j using (unit_id, job_id) join policies p using (policy_id)
      order by w.due_on, j.job_number, p.key limit ${limit} offset ${offset})
    select s.job_number, w.unit_id::text, u.serial, w.component, w.completed_on::text, s.key, w.payer, w.due_on::text,
      w.amount_cents::text, w.currency, coalesce(l.missing, w.missing) as missing
    from shown s join unclaimed_work w using (unit_id, job_id, policy_id, leak) join units u using (unit_id)
      left join missing_lists l using (missing_key)
    order by w.due_on, s.job_number, s.key`);
  return rows.map((row) => ({
    jobNumber: row.job_number,
    unitId: row.unit_id,
    serial: row.serial ?? undefined,
    component: row.component ?? undefined,
    completedOn: row.completed_on,
    policyKey: row.key,
    payer: row.payer,
    lastDay: row.due_on,
    daysLeft: daysBetween(today, row.due_on),
    cents: Number(row.amount_cents),
    currency: row.currency,
    missing: row.missing,
  }));
}

export async function countClaimable(db: Reader, today: Day, filter: ClaimableFilter): Promise<number> {
  const [count] = await db.rows<{ cases: number }>(
    sql`select count(*)::int as cases from unclaimed_work w where ${fits(today, filter)}`,
  );
  return count?.cases ?? 0;
}

export interface ClaimableTotals {
  readonly cases: number;
  /** Cases that must be filed by the day that was asked for. */
  readonly soon: number;
  readonly firstDay: Day | undefined;
  /** By currency, since they are never added. */
  readonly sums: readonly { readonly currency: Currency; readonly cents: number }[];
  readonly payers: readonly string[];
}

/** All of it, whatever the list shows. */
export async function loadClaimableTotals(db: Reader, today: Day, soonUntil: Day): Promise<ClaimableTotals> {
  const rows = await db.rows<{
    currency: Currency;
    payer: string;
    cases: number;
    soon: number;
    cents: string;
    first_day: Day;
  }>(sql`
    select w.currency, w.payer, count(*)::int as cases, count(*) filter (where w.due_on <= ${soonUntil})::int as soon,
      sum(w.amount_cents)::text as cents, min(w.due_on)::text as first_day
    from unclaimed_work w where ${canBeFiled(today)} group by 1, 2 order by 1, 2`);
  const sums = new Map<Currency, number>();
  for (const { currency, cents } of rows) sums.set(currency, (sums.get(currency) ?? 0) + Number(cents));
  return {
    cases: rows.reduce((sum, { cases }) => sum + cases, 0),
    soon: rows.reduce((sum, { soon }) => sum + soon, 0),
    firstDay: rows.map((row) => row.first_day).sort()[0],
    sums: [...sums].map(([currency, cents]) => ({ currency, cents })),
    payers: [...new Set(rows.map(({ payer }) => payer))].sort(),
  };
}

function fits(today: Day, { payer, until }: ClaimableFilter): SQL {
  return sql`${canBeFiled(today)} ${payer === undefined ? sql`` : sql`and w.payer = ${payer}`} ${until === undefined ? sql`` : sql`and w.due_on <= ${until}`}`;
}

/** Nothing was filed for it, and its filing day has not passed. */
function canBeFiled(today: Day): SQL {
  return sql`w.leak = any(${sql.param([...unfiledLeaks])}::text[]) and w.due_on >= ${today}::date`;
}

type Row = {
  job_number: string;
  unit_id: string;
  serial: string | null;
  component: string | null;
  completed_on: Day;
  key: string;
  payer: string;
  due_on: Day;
  amount_cents: string;
  currency: Currency;
  missing: readonly string[];
};
