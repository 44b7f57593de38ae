import { sql } from "drizzle-orm";
import type { Day } from "@/lib/calendar/day";
import { type DelayRecord, delayLearningDays, type LoadDays, type OpenedJobs } from "@/lib/failures/reporting-delay";
import type { Reader } from "../database-types";

/**
 * Closed jobs by the days on which they were opened, closed and loaded, as far back as delays are learnt from.
 * A job's load is the one that brought it first. @param today nothing closed later is believed
 */
export async function loadDelayRecord(db: Reader, { today, timeZone }: DelayDays): Promise<DelayRecord> {
  const [last] = await db.rows<{ on: number | null }>(sql`
    select max(completed_on) - date '1970-01-01' as on from jobs where status = 'closed' and completed_on <= ${today}`);
  const lastClosedOn = last?.on ?? undefined;
  if (lastClosedOn === undefined) return { lastClosedOn, opened: [], withoutOpening: 0, loads: undefined };
  const loads = await loadDays(db, timeZone);
  const rows = await db.rows<DelayRow>(sql`
    with jobs_of_loads as (
      select j.requested_on - date '1970-01-01' as opened, j.completed_on - date '1970-01-01' as closed,
        (b.added_at at time zone ${timeZone})::date - date '1970-01-01' as loaded
      from jobs j join batches b using (batch_id)
      where j.status = 'closed' and j.completed_on <= ${today}
        and j.completed_on > date '1970-01-01' + ${lastClosedOn - delayLearningDays}::int)
    select opened, closed, case when closed >= ${loads?.firstOn ?? null}::int then loaded end as loaded, count(*)::int as jobs
    from jobs_of_loads group by 1, 2, 3`);
  return {
    lastClosedOn,
    opened: rows.flatMap(openedOf),
    withoutOpening: rows.reduce((sum, { opened, jobs }) => sum + (opened === null ? jobs : 0), 0),
    loads,
  };
}

export interface DelayDays {
  readonly today: Day;
  /** Of the shop: in which day a load falls. */
  readonly timeZone: string;
}

interface DelayRow extends Record<string, unknown> {
  readonly opened: number | null;
  readonly closed: number;
  readonly loaded: number | null;
  readonly jobs: number;
}

function openedOf({ opened, closed, loaded, jobs }: DelayRow): OpenedJobs[] {
  if (opened === null) return [];
  return [{ openedOn: opened, closedOn: closed, loadedOn: loaded ?? undefined, jobs }];
}

/** Days on which a load brought jobs that are still here. */
async function loadDays(db: Reader, timeZone: string): Promise<LoadDays | undefined> {
  const [row] = await db.rows<{ first: number | null; last: number | null; days: number }>(sql`
    select min(loaded) as first, max(loaded) as last, count(distinct loaded)::int as days from (
      select (added_at at time zone ${timeZone})::date - date '1970-01-01' as loaded from batches b
      where state = 'added' and exists (select from jobs j where j.batch_id = b.batch_id)) brought`);
  if (row === undefined || row.first === null || row.last === null) return undefined;
  return { firstOn: row.first, lastOn: row.last, days: row.days };
}
