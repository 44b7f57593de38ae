import { sql } from "drizzle-orm";
import type { Day } from "@/lib/calendar/day";
import type { Reader } from "../database-types";

/** What payers still owe for one part, and how many failed ones have to be kept for them. */
export interface CreditsOfPart {
  /** On claims that were sent and are not paid in full. */
  readonly openCents: number;
  readonly claims: number;
  readonly held: number;
  /** First day on which one of those that are held may go; undefined where none is held, or no day is set. */
  readonly firstMayGoOn: Day | undefined;
}

/** @param spellings numbers of the part as jobs spell them */
export async function loadCreditsOfPart(db: Reader, spellings: readonly string[], today: Day): Promise<CreditsOfPart> {
  const [row] = await db.rows<{ open: number; claims: number; held: number; first: Day | null }>(sql`
    select coalesce(sum(cents) filter (where state in ('sent', 'received', 'approved', 'short-paid', 'appealed', 'needs correction')), 0)::float8 as open,
      count(distinct claim_id) filter (where cents > 0 and state in ('sent', 'received', 'approved', 'short-paid', 'appealed', 'needs correction'))::int as claims,
      coalesce(sum(quantity) filter (where held), 0)::int as held, min(keep_part_until) filter (where held)::text as first
    from (select c.claim_id, c.state, c.keep_part_until, l.quantity, greatest(0, coalesce(l.approved_cents, l.claimed_cents) - l.paid_cents) as cents,
        c.keep_part_until >= ${today}::date and c.state not in ('draft', 'withdrawn') and ${onShelf} as held
      from claim_lines l join claims c using (unit_id, claim_id)
      where l.pay_item = 'parts' and l.part_number = any(${sql.param([...spellings])}::text[])) each`);
  return {
    openCents: row?.open ?? 0,
    claims: row?.claims ?? 0,
    held: row?.held ?? 0,
    firstMayGoOn: row?.first ?? undefined,
  };
}

/** The failed part of a claim's line `l` was neither sent back nor scrapped. */
export const onShelf = sql`not exists (
  select from (select fate from part_fates f where f.unit_id = l.unit_id and f.claim_id = l.claim_id and f.line = l.line order by entry desc limit 1) last
  where last.fate <> 'on shelf')`;
