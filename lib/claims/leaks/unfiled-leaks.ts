import { dayInWords } from "@/lib/calendar/day-words";
import type { CoverageAnswer, CoverSource } from "@/lib/coverage/coverage-decision";
import type { JobRecord } from "@/lib/domain/job";
import type { PayItem } from "@/lib/domain/pay-item";
import type { Policy } from "@/lib/domain/policy";
import type { EvidenceCheck } from "@/lib/evidence/evidence-check";
import { type ClaimCase, coversAnything } from "../claim-case";
import { type ClaimGrounds, claimGrounds } from "../claim-grounds";
import { claimFixes } from "../claim-tasks";
import { centsByItem } from "./cents-by-item";
import type { Leak, LeakFound } from "./leak";

export interface UnfiledQuestion {
  readonly record: JobRecord;
  readonly decision: CoverageAnswer;
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
    if (policy.payer.kind === "own_guarantee" || !coversAnything(decision, policy)) return [];
    const asOf = record.job.completedOn;
    const given = { record, decision, evidence: question.evidence(), policy, asOf, holidays: noHolidays };
    const found = leakOf(given, claimGrounds(given));
    return found === undefined ? [] : [{ policyId, found }];
  });
}

const noHolidays: ReadonlySet<never> = new Set();

function leakOf(given: ClaimCase, { covered, amounts, filing, reasons }: ClaimGrounds): LeakFound | undefined {
  const { record, policy } = given;
  const { items, source } = covered;
  if (source === undefined || reasons.length > 0) return undefined;
  const leak = leakKind(record, items, source);
  return {
    leak,
    claimNumber: undefined,
    payer: source.payerName,
    currency: policy.currency,
    dueOn: filing.lastDay,
    cents: centsByItem(amounts),
    missing: claimFixes(given, covered, amounts),
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
