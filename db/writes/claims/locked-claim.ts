import { asc, eq, sql } from "drizzle-orm";
import type { ClaimEvent } from "@/lib/claims/life/claim-act";
import type { Policy } from "@/lib/domain/policy";
import type { Transaction } from "../../database-types";
import { claimEvents } from "../../schema/claim-life";
import { claims } from "../../schema/claims";
import { policies } from "../../schema/coverage";

/** A claim that nobody else can write to until this transaction ends. */
export interface LockedClaim {
  readonly row: typeof claims.$inferSelect;
  readonly jobNumber: string;
  readonly policy: Policy;
  readonly events: readonly ClaimEvent[];
}

export async function lockClaim(tx: Transaction, claimNumber: string): Promise<LockedClaim | undefined> {
  const [row] = await tx.select().from(claims).where(eq(claims.claimNumber, claimNumber)).for("update");
  if (row === undefined) return undefined;
  const [job] = await tx.rows<{ job_number: string }>(
    sql`select job_number from jobs where unit_id = ${row.unitId} and job_id = ${row.jobId}`,
  );
  const [policy] = await tx
    .select({ document: policies.document })
    .from(policies)
    .where(eq(policies.policyId, row.policyId));
  if (job === undefined || policy === undefined) throw new Error(`Claim ${claimNumber} has lost its job or policy.`);
  const stored = await tx
    .select()
    .from(claimEvents)
    .where(sql`${claimEvents.unitId} = ${row.unitId} and ${claimEvents.claimId} = ${row.claimId}`)
    .orderBy(asc(claimEvents.event));
  const events = stored.map(({ event, at, by, note, act }): ClaimEvent => ({ number: event, at, by, note, act }));
  return { row, jobNumber: job.job_number, policy: policy.document as Policy, events }; // parsed before it was stored
}
