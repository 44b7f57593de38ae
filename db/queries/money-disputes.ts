import { sql } from "drizzle-orm";
import type { Day } from "@/lib/calendar/day";
import type { ClaimItem } from "@/lib/claims/claim";
import type { ClaimState } from "@/lib/claims/life/claim-standing";
import type { RefusalReason } from "@/lib/claims/life/refusal-reason";
import { payerWords } from "@/lib/claims/remittance/payer-words";
import type { Currency } from "@/lib/domain/money";
import type { Reader } from "../database-types";

/** A line of a claim of which the payer kept something, and that nobody has disputed. */
export interface DisputedLine {
  readonly claimNumber: string;
  readonly payer: string;
  readonly state: ClaimState;
  readonly line: number;
  readonly item: ClaimItem;
  readonly description: string;
  readonly askedCents: number;
  /** Paid and not taken back again, or approved where nothing was paid yet. */
  readonly grantedCents: number;
  readonly currency: Currency;
  /** As the payer wrote it; empty where it gave none. */
  readonly payerText: string;
  /** Our reason: what somebody said these words mean, else what was entered with the answer. */
  readonly reason: RefusalReason | undefined;
  /** Last day to dispute; undefined where no clock runs. */
  readonly dueOn: Day | undefined;
}

/** Lines that were paid short, cut in an approval, or taken back; those with the nearest last day first, then those whose day has passed. */
export async function loadDisputedLines(db: Reader, today: Day, limit = 500): Promise<DisputedLine[]> {
  const rows = await db.rows<Row>(sql`
    select c.claim_number, c.payer, c.state, l.line, l.pay_item, l.description, l.claimed_cents::text as asked,
      (case when c.state = 'approved' then coalesce(l.approved_cents, l.claimed_cents) else l.paid_cents - l.clawed_back_cents end)::text as granted,
      c.currency, w.due_on::text, coalesce(e.words, '') as payer_text, e.reason
    from (select unit_id, job_id, policy_id, claim_number, min(due_on) as due_on from unclaimed_work
      where leak in ('short-paid', 'part credit', 'charged back') group by 1, 2, 3, 4) w
    join claims c on c.unit_id = w.unit_id and c.claim_number = w.claim_number
    join claim_lines l on l.unit_id = c.unit_id and l.claim_id = c.claim_id
    left join lateral (
      select coalesce(e.act -> 'answer' ->> 'payerText', e.act ->> 'payerText') as words, coalesce(e.act -> 'answer' ->> 'reason', e.act ->> 'reason') as reason
      from claim_events e where e.unit_id = c.unit_id and e.claim_id = c.claim_id and e.what in ('answered', 'clawed back') and not exists (
        select from claim_events u where u.unit_id = e.unit_id and u.claim_id = e.claim_id and u.what = 'undone' and (u.act ->> 'event')::int = e.event)
      order by e.event desc limit 1) e on true
    where l.claimed_cents > (case when c.state = 'approved' then coalesce(l.approved_cents, l.claimed_cents) else l.paid_cents - l.clawed_back_cents end)
    order by (w.due_on < ${today}) is true, w.due_on nulls last, c.claim_number, l.line limit ${limit}`);
  const meanings = await loadMeanings(db);
  return rows.map((row) => ({
    claimNumber: row.claim_number,
    payer: row.payer,
    state: row.state,
    line: row.line,
    item: row.pay_item,
    description: row.description,
    askedCents: Number(row.asked),
    grantedCents: Number(row.granted),
    currency: row.currency,
    payerText: row.payer_text,
    reason: meanings(row.payer, row.payer_text) ?? row.reason ?? undefined,
    dueOn: row.due_on ?? undefined,
  }));
}

/** What each payer's words mean by what was said of them last. */
export async function loadMeanings(db: Reader): Promise<(payer: string, text: string) => RefusalReason | undefined> {
  const rows = await db.rows<{ payer: string; words: string; reason: RefusalReason }>(
    sql`select distinct on (payer, words) payer, words, reason from payer_wordings order by payer, words, version desc`,
  );
  const known = new Map(rows.map(({ payer, words, reason }) => [`${payer}\n${words}`, reason]));
  return (payer, text) => known.get(`${payer}\n${payerWords(text)}`);
}

type Row = {
  claim_number: string;
  payer: string;
  state: ClaimState;
  line: number;
  pay_item: ClaimItem;
  description: string;
  asked: string;
  granted: string;
  currency: Currency;
  due_on: Day | null;
  payer_text: string;
  reason: RefusalReason | null;
};
