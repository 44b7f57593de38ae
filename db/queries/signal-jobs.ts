import { sql } from "drizzle-orm";
import type { Day } from "@/lib/calendar/day";
import type { CellKey } from "@/lib/signals/signal-record";
import type { Reader } from "../database-types";
import { isCounted, unitsOfCell } from "./signal-machines";

export interface WordCount {
  readonly key: string;
  readonly name: string;
  readonly jobs: number;
  /** The same word in the same failures of other machines of the kind. */
  readonly elsewhere: number;
}

export interface SignalJobs {
  readonly jobs: number;
  readonly elsewhere: number;
  /** Symptoms, where a component is counted; components found, where a symptom is. */
  readonly words: readonly WordCount[];
  readonly faultCodes: readonly WordCount[];
  readonly cost: JobCost;
  readonly numbers: readonly string[];
}

/** What such a job took on average, of those since the onset. */
export interface JobCost {
  readonly partsPerJob: number;
  readonly centsPerJob: number;
  readonly currency: string;
  /** Jobs whose payer is not the customer. */
  readonly claimable: number;
}

interface Asked {
  readonly cell: CellKey;
  readonly from: Day;
  readonly asOf: Day;
}

/** The jobs behind a signal since its onset, beside the same kind of job on other machines of that kind. */
export async function loadSignalJobs(db: Reader, asked: Asked): Promise<SignalJobs> {
  const { cell, from, asOf } = asked;
  const own = sql`select u.unit_id from ${unitsOfCell(cell)}`;
  const all = sql`(select j.*, u.unit_id in (${own}) as own from jobs j join units u using (unit_id) join models m using (model_id)
    where m.product_type = ${cell.productType} and ${isCounted(cell)} and ${ofSameMaker(cell)} and j.completed_on <= ${asOf}
      and j.failed_on >= ${from}) j`;
  const [total] = await db.rows<{ jobs: number; elsewhere: number; claimable: number }>(sql`
    select count(*) filter (where own)::int as jobs, count(*) filter (where not own)::int as elsewhere,
      count(*) filter (where own and payer <> 'customer')::int as claimable from ${all}`);
  const [table, column] =
    cell.kind === "component" ? [sql`symptoms`, sql`j.symptom`] : [sql`components`, sql`j.component`];
  const words = await db.rows<WordCount & Record<string, unknown>>(sql`
    select coalesce(${column}, '') as key, coalesce(w.name, 'Not named') as name, count(*) filter (where own)::int as jobs,
      count(*) filter (where not own)::int as elsewhere
    from ${all} left join ${table} w on w.key = ${column} group by 1, 2 having count(*) filter (where own) > 0 order by 3 desc, 2`);
  const faultCodes = await db.rows<WordCount & Record<string, unknown>>(sql`
    select r.word as key, r.word as name, count(distinct j.job_id) filter (where own)::int as jobs,
      count(distinct j.job_id) filter (where not own)::int as elsewhere
    from ${all} join readings r using (unit_id, job_id) where r.outcome = 'code' group by 1, 2
    having count(*) filter (where own) > 0 order by 3 desc, 1`);
  const [cost] = await db.rows<{ parts: number; cents: number; currency: string | null }>(sql`
    select coalesce(avg(p.pieces), 0)::float8 as parts, coalesce(avg(coalesce(j.labour_cents, 0) + coalesce(j.trip_cents, 0) + p.cents), 0)::float8 as cents,
      min(j.currency) as currency
    from ${all} cross join lateral (select coalesce(sum(l.quantity), 0) as pieces, coalesce(sum(l.quantity * l.unit_cost_cents), 0) as cents
      from part_lines l where l.unit_id = j.unit_id and l.job_id = j.job_id) p where own`);
  const numbers = await db.rows<{ number: string }>(sql`
    select job_number as number from ${all} where own order by failed_on desc, job_number limit 12`);
  return {
    jobs: total?.jobs ?? 0,
    elsewhere: total?.elsewhere ?? 0,
    words,
    faultCodes,
    cost: {
      partsPerJob: cost?.parts ?? 0,
      centsPerJob: cost?.cents ?? 0,
      currency: cost?.currency ?? "USD",
      claimable: total?.claimable ?? 0,
    },
    numbers: numbers.map(({ number }) => number),
  };
}

/** A fault code means something else at another maker. */
function ofSameMaker({ kind, maker }: CellKey) {
  return kind === "fault_code" ? sql`m.maker_id in (select maker_id from makers where name = ${maker})` : sql`true`;
}
