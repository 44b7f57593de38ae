import { type SQL, sql } from "drizzle-orm";
import type { DayNumber } from "@/lib/calendar/day-number";
import { ageBands, type Counting, type RateFilter } from "@/lib/failures/rate-question";
import type { Reader } from "../database-types";

export interface OpeningsQuestion {
  readonly where: RateFilter;
  readonly counting: Counting;
  /** First day wanted. */
  readonly since: DayNumber;
}

/**
 * The jobs that a rate counts, by day of failure, from a day on; from the roll-ups, so that the numbers are those of
 * the rates: only units that carry exposure, inside their window.
 */
export async function loadOpenings(db: Reader, question: OpeningsQuestion): Promise<ReadonlyMap<DayNumber, number>> {
  const rows = await db.rows<{ on: number; jobs: number }>(sql`
    select c.failed_on - date '1970-01-01' as on, sum(c.jobs)::int as jobs
    from job_cells c join models m using (model_id) join makers k using (maker_id)
    where ${sql.join(conditions(question), sql` and `)}
    group by 1`);
  return new Map(rows.map(({ on, jobs }) => [on, jobs]));
}

function conditions({ where, counting, since }: OpeningsQuestion): SQL[] {
  const { maker, model, productType, component, symptom, age, ...others } = where;
  others satisfies Record<string, never>; // a new way to narrow must be added here too
  const parts = [
    sql`c.failed_on >= date '1970-01-01' + ${since}::int`,
    sql`c.in_service_on is not null and c.failed_on >= c.observed_from`,
    sql`(c.retired_on is null or c.failed_on <= c.retired_on)`,
  ];
  if (maker !== undefined) parts.push(sql`k.name = ${maker}`);
  if (model !== undefined) parts.push(sql`m.number = ${model}`);
  if (productType !== undefined) parts.push(sql`m.product_type = ${productType}`);
  if (component !== undefined) parts.push(sql`c.component = ${component}`);
  if (symptom !== undefined) parts.push(sql`c.symptom = ${symptom}`);
  if (counting === "failures") parts.push(sql`c.counted_as = 'failure'`);
  else if (counting !== "calls") parts.push(sql`c.cause = ${counting}`);
  const band = ageBands.find(({ key }) => key === age);
  if (band !== undefined) {
    parts.push(sql`c.failed_on - c.in_service_on >= ${band.fromDay}`);
    if (Number.isFinite(band.untilDay)) parts.push(sql`c.failed_on - c.in_service_on < ${band.untilDay}`);
  }
  return parts;
}
