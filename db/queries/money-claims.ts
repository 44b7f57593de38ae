import { sql } from "drizzle-orm";
import type { FiledClaim } from "@/lib/claims/leaks/filed-leaks";
import type { LineStanding } from "@/lib/claims/life/claim-standing";
import type { Reader } from "../database-types";
import { claimLines, claims } from "../schema/claims";
import { inScope, type UnitScope } from "./money-units";
import type { StoredPolicy } from "./policies";

/** A claim that was not withdrawn, with the job and policy it stands for. */
export interface ClaimOfJob {
  readonly unitId: string;
  readonly jobId: string;
  readonly policyId: number;
  /** Undefined while it is a draft. */
  readonly filed: FiledClaim | undefined;
}

export async function loadClaimsOfUnits(
  db: Reader,
  scope: UnitScope,
  policies: readonly StoredPolicy[],
): Promise<ClaimOfJob[]> {
  const rows = await db
    .select()
    .from(claims)
    .where(sql`${inScope(sql`${claims.unitId}`, scope)} and ${claims.state} <> 'withdrawn'`);
  if (rows.length === 0) return [];
  const lines = await loadLines(db, scope);
  return rows.map((row): ClaimOfJob => {
    const { unitId, jobId, policyId, claimNumber, payer, currency, state } = row;
    const clocks = policies.find((each) => each.policyId === policyId)?.policy.clocks;
    if (state === "draft" || clocks === undefined) return { unitId, jobId, policyId, filed: undefined };
    const standing = {
      state,
      lines: lines.get(`${unitId} ${row.claimId}`) ?? [],
      answeredOn: row.answeredOn ?? undefined,
      paidOn: row.paidOn ?? undefined,
    };
    const resubmitBy = row.resubmitBy ?? undefined;
    return { unitId, jobId, policyId, filed: { claimNumber, payer, currency, standing, resubmitBy, clocks } };
  });
}

/** Lines of claims by unit and claim; for a draft they are not yet asked, which nobody reads. */
export async function loadLines(db: Reader, scope: UnitScope): Promise<ReadonlyMap<string, readonly LineStanding[]>> {
  const found = new Map<string, LineStanding[]>();
  const rows = await db
    .select()
    .from(claimLines)
    .where(inScope(sql`${claimLines.unitId}`, scope))
    .orderBy(claimLines.line);
  for (const row of rows) {
    const key = `${row.unitId} ${row.claimId}`;
    const line: LineStanding = {
      line: row.line,
      item: row.payItem,
      askedCents: row.claimedCents,
      approvedCents: row.approvedCents ?? undefined,
      paidCents: row.paidCents,
      clawedBackCents: row.clawedBackCents,
    };
    found.set(key, [...(found.get(key) ?? []), line]);
  }
  return found;
}
