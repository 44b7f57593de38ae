import { sql } from "drizzle-orm";
import type { Reader } from "../database-types";

/** What bends every figure that comes from repairs, as far as it can be measured. */
export interface BiasMeasures {
  readonly registered: number;
  readonly dated: number;
  /** Units known only from their jobs. */
  readonly known: number;
  readonly closed: number;
  readonly withoutSerial: number;
  readonly inWarranty: JobsPerYear;
  readonly afterWarranty: JobsPerYear;
}

export interface JobsPerYear {
  readonly jobs: number;
  readonly unitYears: number;
}

/** First year of service: the cover that nearly every maker gives; common practice, no source. */
const firstYearDays = 365;

/** From the roll-ups, so that its cost does not grow with jobs. */
export async function loadBiasMeasures(db: Reader): Promise<BiasMeasures> {
  const [units] = await db.rows<{ dated: number; undated: number; known: number }>(sql`
    select (select coalesce(sum(units), 0)::int from unit_windows)
        + (select coalesce(sum(units), 0)::int from unplaced_units where reason = 'never_observed') as dated,
      (select coalesce(sum(units), 0)::int from unplaced_units where reason = 'no_in_service_day') as undated,
      (select coalesce(sum(units), 0)::int from unplaced_units where reason = 'not_in_register') as known`);
  const [jobs] = await db.rows<{ closed: number; unplaced: number; first: number; later: number }>(sql`
    select coalesce(sum(jobs), 0)::int as closed, coalesce(sum(jobs) filter (where in_service_on is null), 0)::int as unplaced,
      coalesce(sum(jobs) filter (where failed_on >= observed_from and failed_on - in_service_on < ${firstYearDays}), 0)::int as first,
      coalesce(sum(jobs) filter (where failed_on >= observed_from and failed_on - in_service_on >= ${firstYearDays}), 0)::int as later
    from job_cells`);
  const [years] = await db.rows<{ first: number; later: number }>(sql`
    with ended as (select max(failed_on) as last from job_cells),
    spans as (select w.units, w.observed_from - w.in_service_on as entry, least(coalesce(w.retired_on, e.last), e.last) - w.in_service_on as exit
      from unit_windows w cross join ended e)
    select coalesce(sum(units * greatest(least(exit, ${firstYearDays}) - entry, 0)), 0)::float8 / 365.25 as first,
      coalesce(sum(units * greatest(exit - greatest(entry, ${firstYearDays}), 0)), 0)::float8 / 365.25 as later from spans`);
  return {
    registered: (units?.dated ?? 0) + (units?.undated ?? 0),
    dated: units?.dated ?? 0,
    known: units?.known ?? 0,
    closed: jobs?.closed ?? 0,
    withoutSerial: jobs?.unplaced ?? 0,
    inWarranty: { jobs: jobs?.first ?? 0, unitYears: years?.first ?? 0 },
    afterWarranty: { jobs: jobs?.later ?? 0, unitYears: years?.later ?? 0 },
  };
}
