import { sql } from "drizzle-orm";
import type { Claim } from "@/lib/claims/claim";
import type { CoverageDecision } from "@/lib/coverage/coverage-decision";
import type { EvidenceCheck } from "@/lib/evidence/evidence-check";
import { inTransaction } from "../../in-transaction";
import { claimEvents } from "../../schema/claim-life";
import { claimLines, claims } from "../../schema/claims";
import { refreshUnclaimed } from "../money/refresh-unclaimed";

export interface ClaimToSave {
  readonly unitId: string;
  readonly jobId: string;
  readonly policyId: number;
  readonly claim: Claim;
  readonly decision: CoverageDecision;
  readonly evidence: EvidenceCheck;
  /** Instant at which it was put together, ISO text. */
  readonly builtAt: string;
  /** Who put it together, as typed. */
  readonly by: string;
  /** Year that the claim number bears. */
  readonly year: number;
}

/**
 * Keeps a claim as a draft, with its lines, the grounds it was built on and the first event.
 * Asking twice for the same job and policy gives the same draft.
 * @returns the claim number
 */
export async function saveClaim(draft: ClaimToSave): Promise<string> {
  return await inTransaction(async (tx) => {
    await tx.rows(sql`select pg_advisory_xact_lock(hashtextextended('claim numbers', 0))::text`);
    const [open] = await tx.rows<{ claim_number: string }>(sql`
      select claim_number from claims
      where unit_id = ${draft.unitId} and job_id = ${draft.jobId} and policy_id = ${draft.policyId} and state <> 'withdrawn'`);
    if (open !== undefined) return open.claim_number;
    const [next] = await tx.rows<{ number: string; id: string }>(sql`
      select 'C-' || ${draft.year}::int || '-' || lpad((count(*) + 1)::text, 4, '0') as number,
        (hashtextextended('claim|' || ${draft.jobId}::text || '|' || ${draft.policyId}::int || '|' || count(*), 0) & 9223372036854775807)::text as id
      from claims where claim_number like 'C-' || ${draft.year}::int || '-%'`);
    if (next === undefined) throw new Error("counting claims gave no row");
    const { claim, unitId } = draft;
    await tx.insert(claims).values({
      unitId,
      jobId: draft.jobId,
      claimId: next.id,
      claimNumber: next.number,
      policyId: draft.policyId,
      payer: claim.source.payerName,
      state: "draft",
      currency: claim.currency,
      claimedCents: claim.totalCents,
      fileBy: claim.filing.lastDay,
      decision: { coverage: draft.decision, claim },
      evidence: draft.evidence,
      builtAt: draft.builtAt,
      version: 1,
    });
    if (claim.lines.length > 0) {
      await tx.insert(claimLines).values(
        claim.lines.map((line, index) => ({
          unitId,
          claimId: next.id,
          line: index + 1,
          payItem: line.item,
          description: line.description,
          quantity: line.quantity,
          claimedCents: line.cents,
          basis: line.basis,
          partNumber: line.partNumber ?? null,
          invoiceNumber: line.invoiceNumber ?? null,
          invoiceLine: line.invoiceLine ?? null,
        })),
      );
    }
    await tx.insert(claimEvents).values({
      unitId,
      claimId: next.id,
      event: 1,
      at: draft.builtAt,
      by: draft.by,
      what: "built",
      act: { what: "built" },
      note: "",
    });
    await refreshUnclaimed(tx, [unitId]);
    return next.number;
  });
}
