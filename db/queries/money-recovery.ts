import { sql } from "drizzle-orm";
import type { Day } from "@/lib/calendar/day";
import { unfiledLeaks } from "@/lib/claims/leaks/leak";
import type { ClaimState } from "@/lib/claims/life/claim-standing";
import type { RefusalReason } from "@/lib/claims/life/refusal-reason";
import type { AgedMoney } from "@/lib/claims/recovery/ageing";
import type { SentClaim } from "@/lib/claims/recovery/payer-recovery";
import type { Currency } from "@/lib/domain/money";
import type { Reader } from "../database-types";
import { loadMeanings } from "./money-disputes";

export interface MoneyFacts {
  readonly claims: readonly (SentClaim & { readonly firstSentOn: Day; readonly paidOn: Day | undefined })[];
  readonly aged: readonly (AgedMoney & { readonly currency: Currency })[];
  /** How often each reason was given for a refusal or a cut, by what the payer’s words mean as somebody said last. */
  readonly reasons: readonly { readonly reason: RefusalReason; readonly times: number }[];
}

/** Everything that was ever sent, and what waits. Taken-back events count no more. */
export async function loadMoneyFacts(db: Reader, today: Day): Promise<MoneyFacts> {
  const claims = await db.rows<ClaimRow>(sql`
    select c.payer, c.currency, c.state, c.claimed_cents::text, c.approved_cents::text, c.paid_cents::text, c.clawed_back_cents::text,
      c.open_cents::text, c.first_sent_on::text, c.last_sent_on::text, c.answered_on::text, c.paid_on::text, f.first
    from claims c left join lateral (
      select case when e.what = 'answered' and e.act -> 'answer' ->> 'kind' <> 'approved' then 'sent back'
        when (select coalesce(sum((l ->> 'cents')::bigint), 0) from jsonb_array_elements(case when e.what = 'paid' then e.act -> 'lines' else e.act -> 'answer' -> 'lines' end) l) < s.asked then 'less' else 'in full' end as first
      from claim_events e, lateral (
        select sum((l ->> 'cents')::bigint) as asked from claim_events b, jsonb_array_elements(b.act -> 'lines') l
        where b.unit_id = c.unit_id and b.claim_id = c.claim_id and b.what = 'sent' and b.submission = 1) s
      where e.unit_id = c.unit_id and e.claim_id = c.claim_id and e.what in ('answered', 'paid') and not exists (
        select from claim_events u where u.unit_id = e.unit_id and u.claim_id = e.claim_id and u.what = 'undone' and (u.act ->> 'event')::int = e.event)
      order by e.event limit 1) f on true
    where c.submission is not null order by c.claim_number`);
  const unfiled = await db.rows<{ since: Day; cents: string; currency: Currency }>(sql`
    select completed_on::text as since, amount_cents::text as cents, currency from unclaimed_work
    where leak = any(${sql.param([...unfiledLeaks])}::text[]) and due_on >= ${today}::date`);
  const answers = await db.rows<{ payer: string; text: string | null; reason: RefusalReason }>(sql`
    select c.payer, e.act -> 'answer' ->> 'payerText' as text, e.act -> 'answer' ->> 'reason' as reason
    from claim_events e join claims c using (unit_id, claim_id)
    where e.what = 'answered' and e.act -> 'answer' ->> 'reason' is not null and not exists (
      select from claim_events u where u.unit_id = e.unit_id and u.claim_id = e.claim_id and u.what = 'undone' and (u.act ->> 'event')::int = e.event)`);
  const meaningOf = await loadMeanings(db);
  return {
    claims: claims.map(sentClaim),
    aged: [
      ...unfiled.map((row) => ({
        kind: "unfiled" as const,
        since: row.since,
        cents: Number(row.cents),
        currency: row.currency,
      })),
      ...claims.flatMap(agedClaim),
    ],
    reasons: counted(answers.map(({ payer, text, reason }) => meaningOf(payer, text ?? "") ?? reason)),
  };
}

function counted(reasons: readonly RefusalReason[]): MoneyFacts["reasons"] {
  const times = new Map<RefusalReason, number>();
  for (const reason of reasons) times.set(reason, (times.get(reason) ?? 0) + 1);
  return [...times]
    .map(([reason, found]) => ({ reason, times: found }))
    .sort((a, b) => b.times - a.times || a.reason.localeCompare(b.reason, "en"));
}

type ClaimRow = {
  payer: string;
  currency: Currency;
  state: ClaimState;
  claimed_cents: string;
  approved_cents: string | null;
  paid_cents: string;
  clawed_back_cents: string;
  open_cents: string;
  first_sent_on: Day;
  last_sent_on: Day;
  answered_on: Day | null;
  paid_on: Day | null;
  first: "in full" | "less" | "sent back" | null;
};

function sentClaim(row: ClaimRow): MoneyFacts["claims"][number] {
  return {
    payer: row.payer,
    currency: row.currency,
    state: row.state,
    askedCents: Number(row.claimed_cents),
    approvedCents: row.approved_cents === null ? undefined : Number(row.approved_cents),
    paidCents: Number(row.paid_cents),
    clawedBackCents: Number(row.clawed_back_cents),
    openCents: Number(row.open_cents),
    firstAnswer: row.first ?? undefined,
    firstSentOn: row.first_sent_on,
    paidOn: row.paid_on ?? undefined,
  };
}

function agedClaim(row: ClaimRow): MoneyFacts["aged"] {
  const cents = Number(row.open_cents);
  const { currency } = row;
  const isBack = row.state === "rejected" || row.state === "needs correction";
  if (cents === 0) return [];
  if (isBack) return [{ kind: "rejected", since: row.answered_on ?? row.last_sent_on, cents, currency }];
  return [{ kind: "filed", since: row.last_sent_on, cents, currency }];
}
