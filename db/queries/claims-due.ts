import { sql } from "drizzle-orm";
import type { Day } from "@/lib/calendar/day";
import { answerDays, waitingStates } from "@/lib/claims/life/waiting";
import type { Reader } from "../database-types";

/** What claims that were sent wait for, from us or from their payers. */
export interface ClaimsDue {
  /** Refused or sent back, with the last day for a corrected claim; the nearest first. */
  readonly toCorrect: readonly { readonly claimNumber: string; readonly payer: string; readonly resubmitBy: Day }[];
  /** Sent longer ago than an answer takes; the longest first. */
  readonly unanswered: readonly { readonly claimNumber: string; readonly payer: string; readonly sentOn: Day }[];
  /** Failed parts that must still be kept. */
  readonly partsToKeep: { readonly count: number; readonly firstUntil: Day | undefined };
}

export async function loadClaimsDue(
  db: Reader,
  { today, limit }: { readonly today: Day; readonly limit: number },
): Promise<ClaimsDue> {
  const toCorrect = await db.rows<{ claim_number: string; payer: string; resubmit_by: Day }>(sql`
    select claim_number, payer, resubmit_by::text as resubmit_by from claims
    where resubmit_by is not null order by resubmit_by, claim_number limit ${limit}`);
  const unanswered = await db.rows<{ claim_number: string; payer: string; sent_on: Day }>(sql`
    select claim_number, payer, last_sent_on::text as sent_on from claims
    where state = any(${sql.param([...waitingStates])}::text[]) and last_sent_on < ${today}::date - ${answerDays}::int
    order by last_sent_on, claim_number limit ${limit}`);
  const [kept] = await db.rows<{ count: number; first_until: Day | null }>(sql`
    select count(*)::int as count, min(keep_part_until)::text as first_until from claims where keep_part_until >= ${today}`);
  return {
    toCorrect: toCorrect.map((row) => ({
      claimNumber: row.claim_number,
      payer: row.payer,
      resubmitBy: row.resubmit_by,
    })),
    unanswered: unanswered.map((row) => ({ claimNumber: row.claim_number, payer: row.payer, sentOn: row.sent_on })),
    partsToKeep: { count: kept?.count ?? 0, firstUntil: kept?.first_until ?? undefined },
  };
}
