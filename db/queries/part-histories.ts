import { type SQL, sql } from "drizzle-orm";
import type { Day } from "@/lib/calendar/day";
import type { Currency } from "@/lib/domain/money";
import type { Reader } from "../database-types";

/** How one number, as jobs spell it, was used. */
export interface NumberUse {
  readonly partNumber: string;
  readonly description: string;
  /** The one component on all its lines; undefined where they name several or none. */
  readonly component: string | undefined;
  readonly lastUsedOn: Day;
  /** Of one piece, on the last job. */
  readonly lastCost: { readonly cents: number; readonly currency: Currency };
  readonly jobsLastYear: number;
  /** Pieces by month, as far as there were any; months counted from the first of the span. */
  readonly months: ReadonlyMap<number, number>;
}

export interface HistorySpan {
  /** First days of the first month, and of the month after the last. */
  readonly from: Day;
  readonly until: Day;
}

/**
 * Use of numbers in the whole months of a span: parts fitted on closed jobs; core charges and freight are no parts.
 * @param only these numbers; all where absent
 */
export async function loadNumberUse(db: Reader, span: HistorySpan, only?: readonly string[]): Promise<NumberUse[]> {
  const which = only === undefined ? sql`true` : sql`p.part_number = any(${sql.param([...only])}::text[])`;
  const named = await db.rows<NamedRow>(sql`
    select distinct on (p.part_number) p.part_number, p.description, j.completed_on::text as last_used_on,
      p.unit_cost_cents::float8 as cents, p.currency
    from part_lines p join jobs j using (unit_id, job_id)
    where ${fitted} and ${which} order by p.part_number, j.completed_on desc, j.job_id, p.line`);
  const used = await db.rows<{ part_number: string; month: number; quantity: number }>(sql`
    select p.part_number, ${monthOf(sql`j.completed_on`)} - ${monthOf(sql`${span.from}::date`)} as month, sum(p.quantity)::int as quantity
    from part_lines p join jobs j using (unit_id, job_id)
    where ${fitted} and ${which} and j.completed_on >= ${span.from}::date and j.completed_on < ${span.until}::date group by 1, 2`);
  const over = await db.rows<{ part_number: string; jobs: number; component: string | null }>(sql`
    select p.part_number, case when count(distinct p.component) = 1 then min(p.component) end as component,
      count(distinct j.job_id) filter (where j.completed_on >= ${span.until}::date - interval '1 year' and j.completed_on < ${span.until}::date)::int as jobs
    from part_lines p join jobs j using (unit_id, job_id) where ${fitted} and ${which} group by 1`);
  const overall = new Map(over.map((row) => [row.part_number, row]));
  const months = new Map<string, Map<number, number>>();
  for (const { part_number, month, quantity } of used) {
    const of = months.get(part_number) ?? new Map<number, number>();
    months.set(part_number, of.set(month, quantity));
  }
  return named.map((row) => ({
    partNumber: row.part_number,
    description: row.description,
    component: overall.get(row.part_number)?.component ?? undefined,
    lastUsedOn: row.last_used_on,
    lastCost: { cents: row.cents, currency: row.currency },
    jobsLastYear: overall.get(row.part_number)?.jobs ?? 0,
    months: months.get(row.part_number) ?? new Map(),
  }));
}

type NamedRow = {
  part_number: string;
  description: string;
  last_used_on: Day;
  cents: number;
  currency: Currency;
};

const fitted = sql`p.role = 'fitted' and j.status = 'closed'`;

function monthOf(day: SQL): SQL {
  return sql`(extract(year from ${day})::int * 12 + extract(month from ${day})::int)`;
}

/** Every number that a job ever used. The index on numbers is read number by number, so that lines are not. */
export async function loadUsedNumbers(db: Reader): Promise<readonly string[]> {
  const rows = await db.rows<{ number: string }>(sql`
    with recursive each as (
      select min(part_number) as number from part_lines
      union all
      select (select min(part_number) from part_lines where part_number > each.number) from each where each.number is not null)
    select number from each where number is not null`);
  return rows.map(({ number }) => number);
}

/** First day of the month of the first closed job, but no earlier than 72 months before `until`; undefined without jobs. */
export async function loadFirstMonth(db: Reader, until: Day): Promise<Day | undefined> {
  const [row] = await db.rows<{ first: Day | null }>(sql`
    select greatest(date_trunc('month', min(completed_on)), ${until}::date - interval '72 months')::date::text as first
    from jobs where status = 'closed' and completed_on < ${until}::date`);
  return row?.first ?? undefined;
}
