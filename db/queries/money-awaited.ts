import { sql } from "drizzle-orm";
import type { Day } from "@/lib/calendar/day";
import type { AwaitedClaim } from "@/lib/claims/remittance/remittance-line";
import type { Reader } from "../database-types";
import { claims } from "../schema/claims";
import { loadLines } from "./money-claims";

/** Claims that were sent and may still be paid or charged back. @param payer whose claims alone; those of all where absent */
export async function loadAwaitedClaims(db: Reader, payer?: string): Promise<AwaitedClaim[]> {
  const rows = await db
    .select()
    .from(claims)
    .where(
      sql`${claims.submission} is not null and ${claims.state} <> 'withdrawn' ${payer === undefined ? sql`` : sql`and ${claims.payer} = ${payer}`}`,
    );
  if (rows.length === 0) return [];
  const unitIds = [...new Set(rows.map(({ unitId }) => unitId))];
  const lines = await loadLines(db, { kind: "units", unitIds });
  const jobs = await db.rows<{
    job_id: string;
    unit_id: string;
    job_number: string;
    completed_on: Day;
    serial: string | null;
  }>(sql`
    select j.job_id::text, j.unit_id::text, j.job_number, j.completed_on::text, u.serial from jobs j join units u using (unit_id)
    where j.unit_id = any(${sql.param(unitIds)}::bigint[])`);
  const jobOf = new Map(jobs.map((job) => [`${job.unit_id} ${job.job_id}`, job]));
  return rows.flatMap((row): AwaitedClaim[] => {
    const job = jobOf.get(`${row.unitId} ${row.jobId}`);
    if (job === undefined) return [];
    return [
      {
        claimNumber: row.claimNumber,
        jobNumber: job.job_number,
        payerReference: row.payerReference ?? undefined,
        serial: job.serial ?? undefined,
        completedOn: job.completed_on,
        currency: row.currency,
        lines: lines.get(`${row.unitId} ${row.claimId}`) ?? [],
      },
    ];
  });
}

export async function loadPayersOfClaims(db: Reader): Promise<string[]> {
  const rows = await db.rows<{ payer: string }>(sql`
    select payer from claims where submission is not null group by 1
    union select document -> 'payer' ->> 'name' from policies order by 1`);
  return rows.map(({ payer }) => payer);
}
