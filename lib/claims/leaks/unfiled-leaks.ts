import { dayInWords } from "@/lib/calendar/day-words";
import type { CoverageDecision, CoverSource } from "@/lib/coverage/coverage-decision";
import type { JobRecord } from "@/lib/domain/job";
import type { PayItem } from "@/lib/domain/pay-item";
import type { Policy } from "@/lib/domain/policy";
import type { EvidenceCheck } from "@/lib/evidence/evidence-check";
import { assembleClaim } from "../assemble-claim";
import type { Claim } from "../claim";
import { coveredByPolicy } from "../claim-case";
import { centsByItem } from "./cents-by-item";
import type { Leak, LeakFound } from "./leak";

export interface UnfiledQuestion {
  readonly record: JobRecord;
  readonly decision: CoverageDecision;
  /** Asked for only where a policy covers something, since most jobs need no check. */
  readonly evidence: () => EvidenceCheck;
  /** Policy versions that bear on the unit and under which nothing is filed for this job. */
  readonly policies: readonly { readonly policyId: number; readonly policy: Policy }[];
}

/**
 * What each policy would have paid for a job on which nothing was filed. The claim is put together as of the day the job
 * was completed, so that nothing here depends on today; whether its filing day has passed is asked when it is read.
 * The company's own guarantee is left out: it pays itself nothing.
 */
export function unfiledLeaks(question: UnfiledQuestion): readonly { policyId: number; found: LeakFound }[] {
  const { record, decision, policies } = question;
  if (decision.verdict !== "covered") return [];
  return policies.flatMap(({ policyId, policy }) => {
    const { items, source } = coveredByPolicy({ decision, policy });
    if (source === undefined || policy.payer.kind === "own_guarantee") return [];
    const asOf = record.job.completedOn;
    const given = { record, decision, evidence: question.evidence(), policy, asOf, holidays: new Set<never>() };
    const assembly = assembleClaim(given);
    return assembly.kind === "claim" ? [{ policyId, found: leakOf(record, assembly.claim, items, source) }] : [];
  });
}

function leakOf(record: JobRecord, claim: Claim, items: readonly PayItem[], source: CoverSource): LeakFound {
  const leak = leakKind(record, items, source);
  return {
    leak,
    claimNumber: undefined,
    payer: source.payerName,
    currency: claim.currency,
    dueOn: claim.filing.lastDay,
    cents: centsByItem(claim),
    missing: claim.tasks.flatMap(({ fixes }) => fixes),
    reason: reasonOf(leak, record, items, source),
  };
}

function leakKind({ job }: JobRecord, items: readonly PayItem[], source: CoverSource): Leak {
  if (source.campaign !== undefined) return "campaign";
  if (isBorneAsRepeat(job)) return "repeat absorbed";
  if (job.payer === "customer" && items.includes("parts") && !items.includes("labour")) return "parts only";
  return "never filed";
}

/** The company paid because it took the job for a return to its own work, though the payer's repeat rule lets it be claimed. */
function isBorneAsRepeat({ payer, callbackOf }: JobRecord["job"]): boolean {
  return payer === "own_guarantee" || (callbackOf !== undefined && payer !== "customer");
}

function reasonOf(leak: Leak, { job }: JobRecord, items: readonly PayItem[], source: CoverSource): string {
  const { policyName, version, campaignName } = source;
  const terms = campaignName === undefined ? `${policyName}, version ${version},` : `Campaign ${campaignName}`;
  const covers = `${terms} covers ${items.join(", ")}`;
  const reported = dayInWords(job.requestedOn ?? job.firstVisitOn ?? job.completedOn);
  switch (leak) {
    case "parts only":
      return `${covers} but no labour; the job reported on ${reported} was billed to the customer and the part never claimed.`;
    case "repeat absorbed":
      return `${covers}; the job reported on ${reported} was borne here as a return, yet by the payer’s repeat rule it is payable.`;
    default:
      return `${covers}; for the job reported on ${reported} no claim was made.`;
  }
}
