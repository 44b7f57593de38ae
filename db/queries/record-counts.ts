import { sql } from "drizzle-orm";
import type { Reader } from "../database-types";
import { loadCountedState } from "./counted-state";

/** How much there is, whatever the filter: asked on every visit of the lists and of the first page. */
export interface RecordCounts {
  readonly jobs: number;
  readonly closedJobs: number;
  /** With a serial. */
  readonly units: number;
}

/** Counted anew: one pass over jobs and one over units. */
export async function loadRecordCounts(db: Reader): Promise<RecordCounts> {
  const [counts] = await db.rows<{ jobs: number; closedJobs: number; units: number }>(sql`
    select j.jobs, j."closedJobs", u.units
    from (select count(*)::int as jobs, count(*) filter (where status = 'closed')::int as "closedJobs" from jobs) j,
      (select count(*)::int as units from units where identified) u`);
  if (counts === undefined) throw new Error("an aggregate gave no row");
  return counts;
}

/** The change log names the state of the data; this bounds what a change by hand past it could leave. */
const longestMs = 10 * 60_000;
let kept: { readonly state: string; readonly until: number; readonly counts: RecordCounts } | undefined;

/**
 * The same, counted once while jobs and units stand as they are. The state is read in the caller's own transaction, so that
 * the counts are of the very rows that it sees.
 */
export async function keptRecordCounts(db: Reader): Promise<RecordCounts> {
  const state = await loadCountedState(db);
  if (kept !== undefined && kept.state === state && kept.until > performance.now()) return kept.counts;
  const counts = await loadRecordCounts(db);
  kept = { state, until: performance.now() + longestMs, counts };
  return counts;
}
