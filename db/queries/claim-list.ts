import { type SQL, sql } from "drizzle-orm";
import type { Day } from "@/lib/calendar/day";
import { answerDays, type ListedState, waitingStates } from "@/lib/claims/life/waiting";
import type { Currency } from "@/lib/domain/money";
import type { Reader } from "../database-types";

export interface ClaimListRow {
  readonly claimNumber: string;
  readonly payer: string;
  readonly state: ListedState;
  readonly jobNumber: string;
  readonly completedOn: Day;
  readonly unitId: string;
  readonly serial: string | undefined;
  readonly fileBy: Day | undefined;
  readonly claimedCents: number;
  readonly paidCents: number;
  readonly openCents: number;
  readonly currency: Currency;
  readonly policyId: number;
  /** How often it was filed; 0 for a draft. */
  readonly filings: number;
  readonly firstSentOn: Day | undefined;
  readonly lastSentOn: Day | undefined;
  readonly answeredOn: Day | undefined;
  readonly resubmitBy: Day | undefined;
  readonly keepPartUntil: Day | undefined;
  readonly payerReference: string | undefined;
  /** Day of the latest event, for a claim that is settled. */
  readonly changedOn: Day;
}

export const claimSorts = ["due", "amount", "open", "payer", "sent"] as const;
export type ClaimSort = (typeof claimSorts)[number];

export interface ClaimListFilter {
  readonly states: readonly ListedState[];
  readonly payer?: string | undefined;
  readonly words?: string | undefined;
  readonly sort?: ClaimSort | undefined;
  /** Only what must be done by this day: filed, sent again, or answered by the payer. */
  readonly until?: Day | undefined;
}

interface Span {
  readonly offset: number;
  readonly limit: number;
}

/** The day that the list shows: to file by, to send again by, of the answer, and until when the part is kept. */
const due = sql`case when c.state = 'draft' then c.file_by when c.resubmit_by is not null then c.resubmit_by
  when c.state = any(${sql.param([...waitingStates])}::text[]) then c.last_sent_on + ${answerDays}::integer else c.keep_part_until end`;

const orders: Readonly<Record<ClaimSort, SQL>> = {
  due: sql`${due} nulls last`,
  amount: sql`c.claimed_cents desc`,
  open: sql`c.open_cents desc`,
  payer: sql`c.payer`,
  sent: sql`c.last_sent_on nulls last`,
};

/** Claims in these states; those with the nearest day on top unless asked otherwise. */
export async function loadClaimList(
  db: Reader,
  filter: ClaimListFilter,
  { offset, limit }: Span = { offset: 0, limit: 500 },
): Promise<ClaimListRow[]> {
  const rows = await db.rows<Row>(sql`${select} where ${fits(filter)}
    order by ${orders[filter.sort ?? "due"]}, c.claim_number limit ${limit} offset ${offset}`);
  return rows.map(claimRow);
}

export async function countClaims(db: Reader, filter: ClaimListFilter): Promise<number> {
  const [count] = await db.rows<{ claims: number }>(
    sql`select count(*)::int as claims from claims c join jobs j using (unit_id, job_id) join units u using (unit_id) where ${fits(filter)}`,
  );
  return count?.claims ?? 0;
}

function fits({ states, payer, words, until }: ClaimListFilter): SQL {
  const looked = `%${(words ?? "").replaceAll(/[\\%_]/g, "\\$&")}%`;
  return sql`${listed} = any(${sql.param([...states])}::text[]) ${payer === undefined ? sql`` : sql`and c.payer = ${payer}`}
    ${words === undefined ? sql`` : sql`and (c.claim_number ilike ${looked} or j.job_number ilike ${looked} or u.serial ilike ${looked} or c.payer_reference ilike ${looked})`}
    ${until === undefined ? sql`` : sql`and case when c.state = 'draft' then c.file_by else coalesce(c.resubmit_by, c.last_sent_on + ${answerDays}::integer) end <= ${until}`}`;
}

export interface ClaimCounts {
  readonly byState: ReadonlyMap<ListedState, number>;
  readonly payers: readonly string[];
}

export async function loadClaimCounts(db: Reader): Promise<ClaimCounts> {
  const rows = await db.rows<{ state: ListedState; count: number }>(
    sql`select ${listed} as state, count(*)::int as count from claims c group by 1`,
  );
  const payers = await db.rows<{ payer: string }>(sql`select distinct payer from claims order by payer`);
  return { byState: new Map(rows.map((row) => [row.state, row.count])), payers: payers.map(({ payer }) => payer) };
}

export async function findClaim(db: Reader, claimNumber: string): Promise<ClaimListRow | undefined> {
  const [row] = await db.rows<Row>(sql`${select} where c.claim_number = ${claimNumber} limit 1`);
  return row && claimRow(row);
}

/** Claims of one job that are not withdrawn. */
export async function loadClaimsOfJob(db: Reader, jobNumber: string): Promise<ClaimListRow[]> {
  const rows = await db.rows<Row>(
    sql`${select} where j.job_number = ${jobNumber} and c.state <> 'withdrawn' order by c.claim_number`,
  );
  return rows.map(claimRow);
}

/** Closed jobs, completed since a day, on which nobody has started a claim: candidates, not yet judged. */
export async function loadUnclaimedJobNumbers(db: Reader, since: Day): Promise<string[]> {
  const rows = await db.rows<{ job_number: string }>(sql`
    select j.job_number from jobs j join units u using (unit_id)
    where j.counted_as = 'failure' and j.completed_on >= ${since} and u.identified
      and not exists (select 1 from claims c where c.unit_id = j.unit_id and c.job_id = j.job_id and c.state <> 'withdrawn')
    order by j.completed_on, j.job_number`);
  return rows.map((row) => row.job_number);
}

type Row = {
  claim_number: string;
  payer: string;
  job_number: string;
  completed_on: Day;
  unit_id: string;
  serial: string | null;
  file_by: Day | null;
  state: ListedState;
  claimed_cents: string;
  paid_cents: string;
  open_cents: string;
  currency: Currency;
  policy_id: number;
  submission: number | null;
  first_sent_on: Day | null;
  last_sent_on: Day | null;
  answered_on: Day | null;
  resubmit_by: Day | null;
  keep_part_until: Day | null;
  payer_reference: string | null;
  changed_on: Day;
};

const listed = sql`case when c.state = 'approved' and c.approved_cents < c.claimed_cents then 'approved in part' else c.state end`;

const select = sql`
  select c.claim_number, c.payer, j.job_number, j.completed_on::text as completed_on, j.unit_id, u.serial, c.file_by::text as file_by, ${listed} as state, c.claimed_cents,
    c.paid_cents, c.open_cents, c.currency, c.policy_id, c.submission, c.first_sent_on::text as first_sent_on, c.last_sent_on::text as last_sent_on,
    c.answered_on::text as answered_on, c.resubmit_by::text as resubmit_by, c.keep_part_until::text as keep_part_until, c.payer_reference,
    (select max(e.at)::date::text from claim_events e where e.unit_id = c.unit_id and e.claim_id = c.claim_id) as changed_on
  from claims c join jobs j using (unit_id, job_id) join units u using (unit_id)`;

function claimRow(row: Row): ClaimListRow {
  return {
    claimNumber: row.claim_number,
    payer: row.payer,
    jobNumber: row.job_number,
    completedOn: row.completed_on,
    unitId: row.unit_id,
    serial: row.serial ?? undefined,
    fileBy: row.file_by ?? undefined,
    state: row.state,
    claimedCents: Number(row.claimed_cents),
    paidCents: Number(row.paid_cents),
    openCents: Number(row.open_cents),
    currency: row.currency,
    policyId: row.policy_id,
    filings: row.submission ?? 0,
    firstSentOn: row.first_sent_on ?? undefined,
    lastSentOn: row.last_sent_on ?? undefined,
    answeredOn: row.answered_on ?? undefined,
    resubmitBy: row.resubmit_by ?? undefined,
    keepPartUntil: row.keep_part_until ?? undefined,
    payerReference: row.payer_reference ?? undefined,
    changedOn: row.changed_on,
  };
}
