import { sql } from "drizzle-orm";
import type { Day } from "@/lib/calendar/day";
import type { CellKey } from "@/lib/signals/signal-record";
import type { Reader } from "../database-types";
import { isCounted, isUnitOfCell } from "./signal-machines";
import { observedFrom } from "./signal-units";

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

/** What each part of the answer is made of; one statement, so that the jobs are looked for once. */
interface Found {
  total: { jobs: number; elsewhere: number; claimable: number };
  words: WordCount[] | null;
  codes: WordCount[] | null;
  cost: { parts: number; cents: number; currency: string | null };
  numbers: string[] | null;
}

/** The jobs behind a signal since its onset, beside the same kind of job on other machines of that kind. */
export async function loadSignalJobs(db: Reader, { cell, from, asOf }: Asked): Promise<SignalJobs> {
  const [table, column] =
    cell.kind === "component" ? [sql`symptoms`, sql`j.symptom`] : [sql`components`, sql`j.component`];
  const [found] = await db.rows<Found & Record<string, unknown>>(sql`
    with j as materialized (
      select j.unit_id, j.job_id, j.job_number, j.failed_on, j.payer, j.symptom, j.component, j.labour_cents, j.trip_cents, j.currency,
        ${isUnitOfCell(cell)} as own
      from jobs j join units u using (unit_id) join models m using (model_id) join makers k on k.maker_id = m.maker_id left join shop on true
        cross join lateral (${observedFrom}) o
      where m.product_type = ${cell.productType} and ${isCounted(cell)} and ${ofSameMaker(cell)} and j.completed_on <= ${asOf} and j.failed_on >= ${from}),
    words as (
      select coalesce(${column}, '') as key, coalesce(w.name, 'Not named') as name, count(*) filter (where own) as jobs, count(*) filter (where not own) as elsewhere
      from j left join ${table} w on w.key = ${column} group by 1, 2 having count(*) filter (where own) > 0),
    codes as (
      select r.word as key, r.word as name, count(distinct j.job_id) filter (where own) as jobs, count(distinct j.job_id) filter (where not own) as elsewhere
      from j join readings r using (unit_id, job_id) where r.outcome = 'code' group by 1, 2 having count(*) filter (where own) > 0),
    taken as (
      select unit_id, job_id, sum(l.quantity) as pieces, sum(l.quantity * l.unit_cost_cents) as cents
      from j join part_lines l using (unit_id, job_id) where own group by 1, 2)
    select
      (select json_build_object('jobs', count(*) filter (where own), 'elsewhere', count(*) filter (where not own),
        'claimable', count(*) filter (where own and payer <> 'customer')) from j) as total,
      (select json_agg(w order by jobs desc, name) from words w) as words,
      (select json_agg(c order by jobs desc, key) from codes c) as codes,
      (select json_build_object('parts', coalesce(avg(coalesce(t.pieces, 0)), 0)::float8, 'currency', min(j.currency),
          'cents', coalesce(avg(coalesce(j.labour_cents, 0) + coalesce(j.trip_cents, 0) + coalesce(t.cents, 0)), 0)::float8)
        from j left join taken t using (unit_id, job_id) where own) as cost,
      (select json_agg(job_number) from (select job_number from j where own order by failed_on desc, job_number limit 12) n) as numbers`);
  return {
    jobs: found?.total.jobs ?? 0,
    elsewhere: found?.total.elsewhere ?? 0,
    words: found?.words ?? [],
    faultCodes: found?.codes ?? [],
    cost: {
      partsPerJob: found?.cost.parts ?? 0,
      centsPerJob: found?.cost.cents ?? 0,
      currency: found?.cost.currency ?? "USD",
      claimable: found?.total.claimable ?? 0,
    },
    numbers: found?.numbers ?? [],
  };
}

/** A fault code means something else at another maker. */
function ofSameMaker({ kind, maker }: CellKey) {
  return kind === "fault_code" ? sql`k.name = ${maker}` : sql`true`;
}
