import { sql } from "drizzle-orm";
import type { InServiceBasis } from "@/lib/domain/unit";
import type { Reader } from "../database-types";

/** What stands behind every rate, and what stays outside of it. */
export interface WhatIsCounted {
  /** Units of the register by the date that put them in service; undefined where none did. */
  readonly registered: readonly { readonly basis: InServiceBasis | undefined; readonly units: number }[];
  /** Units that are known only because they had a job; they add no unit-years. */
  readonly knownFromJobsOnly: number;
  /** Units of the register that left service before anything could be seen of them. */
  readonly neverWatched: number;
  readonly jobs: JobsCounted;
}

export interface JobsCounted {
  readonly onRecord: number;
  /** Void, cancelled, estimates, duplicates. */
  readonly countedAsNothing: number;
  readonly closed: number;
  readonly failures: number;
  /** Closed without a serial, so that nothing ties them to a unit. */
  readonly withoutSerial: number;
  /** Closed, on units that carry no unit-years; those without a serial are among them. */
  readonly withoutExposure: number;
  readonly beforeRecords: number;
  readonly afterRetirement: number;
  /** Closed with the component itself as the cause, but no component named. */
  readonly withoutComponent: number;
  readonly causeNotDetermined: number;
  /** Rows of files that were set aside, and have not been mended since. */
  readonly rowsSetAside: number;
}

/** Counts over everything on record; one pass over units and jobs, so not for a page that opens often. */
export async function loadWhatIsCounted(db: Reader): Promise<WhatIsCounted> {
  const registered = await db.rows<{ basis: InServiceBasis | null; units: number }>(sql`
    select in_service_basis as basis, count(*)::int as units from units where in_register
    group by 1 order by 2 desc, 1`);
  const [others] = await db.rows<{ known: number; never: number; waiting: number }>(sql`
    select (select count(*)::int from units where identified and not in_register) as known,
      (select coalesce(sum(units), 0)::int from unplaced_units where reason = 'never_observed') as never,
      (select count(*)::int from held_rows r join batches b using (batch_id)
        where b.state = 'added' and r.state <> 'mended') as waiting`);
  const [jobs] = await db.rows<JobRow>(sql`
    select count(*)::int as "onRecord",
      count(*) filter (where counted_as = 'nothing')::int as "countedAsNothing",
      count(*) filter (where counted_as <> 'nothing')::int as closed,
      count(*) filter (where counted_as = 'failure')::int as failures,
      count(*) filter (where counted_as <> 'nothing' and not identified)::int as "withoutSerial",
      count(*) filter (where counted_as <> 'nothing' and cause = 'component' and component is null)::int as "withoutComponent",
      count(*) filter (where counted_as <> 'nothing' and cause = 'not_determined')::int as "causeNotDetermined"
    from jobs join units using (unit_id)`);
  const [cells] = await db.rows<CellRow>(sql`
    select coalesce(sum(jobs) filter (where in_service_on is null), 0)::int as "withoutExposure",
      coalesce(sum(jobs) filter (where failed_on < observed_from), 0)::int as "beforeRecords",
      coalesce(sum(jobs) filter (where failed_on >= observed_from and failed_on > retired_on), 0)::int as "afterRetirement"
    from job_cells`);
  if (others === undefined || jobs === undefined || cells === undefined) throw new Error("an aggregate gave no row");
  return {
    registered: registered.map(({ basis, units }) => ({ basis: basis ?? undefined, units })),
    knownFromJobsOnly: others.known,
    neverWatched: others.never,
    jobs: { ...jobs, ...cells, rowsSetAside: others.waiting },
  };
}

type CellKey = "withoutExposure" | "beforeRecords" | "afterRetirement";
type CellRow = { readonly [K in CellKey]: number };
type JobRow = { readonly [K in Exclude<keyof JobsCounted, CellKey | "rowsSetAside">]: number };
