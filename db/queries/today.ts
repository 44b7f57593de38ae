import { sql } from "drizzle-orm";
import type { Day } from "@/lib/calendar/day";
import type { Reader } from "../database-types";
import type { RecordCounts } from "./record-counts";

/** What waits and what there is, for the first page. */
export interface TodayFacts extends Pick<RecordCounts, "closedJobs" | "units"> {
  /** The latest load that has not been taken back. */
  readonly lastLoad: LastLoad | undefined;
  readonly held: readonly HeldLoad[];
  /** Drafts with a filing day, the earliest first. */
  readonly drafts: readonly DraftClaim[];
}

export interface LastLoad {
  readonly fileName: string;
  readonly rows: number;
  /** Day in the shop's zone. */
  readonly on: Day;
}

export interface HeldLoad {
  readonly batchId: number;
  readonly fileName: string;
  readonly rows: number;
}

export interface DraftClaim {
  readonly claimNumber: string;
  readonly payer: string;
  readonly fileBy: Day;
}

interface Wanted {
  readonly timeZone: string;
  /** How many drafts at most; the page shows the most urgent ones. */
  readonly draftLimit: number;
  readonly counts: RecordCounts;
}

export async function loadTodayFacts(
  db: Reader,
  { timeZone, draftLimit, counts: { closedJobs, units } }: Wanted,
): Promise<TodayFacts> {
  const [last] = await db.rows<{ file_name: string; rows_total: number; added_on: Day }>(sql`
    select file_name, rows_total, (added_at at time zone ${timeZone})::date::text as added_on
    from batches where state = 'added' order by added_at desc, batch_id desc limit 1`);
  const held = await db.rows<{ batch_id: string; file_name: string; rows: number }>(sql`
    select b.batch_id::text as batch_id, b.file_name, count(*)::int as rows from held_rows h join batches b using (batch_id)
    where b.state = 'added' group by b.batch_id, b.file_name order by b.batch_id desc`);
  const drafts = await db.rows<{ claim_number: string; payer: string; file_by: Day }>(sql`
    select claim_number, payer, file_by::text as file_by from claims
    where state = 'draft' and file_by is not null order by file_by, claim_number limit ${draftLimit}`);
  return {
    closedJobs,
    units,
    lastLoad: last === undefined ? undefined : { fileName: last.file_name, rows: last.rows_total, on: last.added_on },
    held: held.map((row) => ({ batchId: Number(row.batch_id), fileName: row.file_name, rows: row.rows })),
    drafts: drafts.map((row) => ({ claimNumber: row.claim_number, payer: row.payer, fileBy: row.file_by })),
  };
}
