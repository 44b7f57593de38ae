import { sql } from "drizzle-orm";
import type { Day } from "@/lib/calendar/day";
import type { Currency } from "@/lib/domain/money";
import type { Reader } from "../database-types";

export interface ClaimListRow {
  readonly claimNumber: string;
  readonly payer: string;
  readonly jobNumber: string;
  readonly completedOn: Day;
  readonly unitId: string;
  readonly serial: string | undefined;
  readonly fileBy: Day | undefined;
  readonly claimedCents: number;
  readonly currency: Currency;
  readonly policyId: number;
}

/** Open drafts, those that must be filed first on top. */
export async function loadClaimList(db: Reader): Promise<ClaimListRow[]> {
  const rows = await db.rows<Row>(sql`${select} where c.state = 'draft' order by c.file_by nulls last, c.claim_number`);
  return rows.map(claimRow);
}

export async function findClaim(db: Reader, claimNumber: string): Promise<ClaimListRow | undefined> {
  const [row] = await db.rows<Row>(
    sql`${select} where c.claim_number = ${claimNumber} and c.state <> 'withdrawn' limit 1`,
  );
  return row && claimRow(row);
}

/** Drafts of one job. */
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
  claimed_cents: string;
  currency: Currency;
  policy_id: number;
};

const select = sql`
  select c.claim_number, c.payer, j.job_number, j.completed_on::text as completed_on, j.unit_id, u.serial, c.file_by::text as file_by, c.claimed_cents,
    c.currency, c.policy_id
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
    claimedCents: Number(row.claimed_cents),
    currency: row.currency,
    policyId: row.policy_id,
  };
}
