import { dayInWords } from "@/lib/calendar/day-words";
import { addTerm } from "@/lib/calendar/term";
import type { JobRecord } from "@/lib/domain/job";
import type { Policy } from "@/lib/domain/policy";
import type { ClaimAmounts } from "./claim-amounts";
import { centsInWords } from "./money-words";

export type AuthorizationCheck =
  | { readonly kind: "not_needed" }
  | { readonly kind: "in_place"; readonly found: string }
  | { readonly kind: "missing"; readonly fix: string };

/** Whether this repair needed the payer's number beforehand, and whether the number on file was good. */
export function authorizationCheck(record: JobRecord, policy: Policy, amounts: ClaimAmounts): AuthorizationCheck {
  const why = whyNeeded(record, policy, amounts);
  if (why === undefined) return { kind: "not_needed" };
  const { authorizationNumber, authorizedOn, completedOn } = record.job;
  if (authorizationNumber === undefined || authorizationNumber.trim() === "") {
    return { kind: "missing", fix: `Ask ${policy.payer.name} for an authorization number: ${why}.` };
  }
  const { validFor } = policy.authorization;
  const given = `Authorization ${authorizationNumber}`;
  if (validFor === undefined) return { kind: "in_place", found: `${given}.` };
  if (authorizedOn === undefined)
    return { kind: "missing", fix: `Enter the day on which ${given} was given: it expires.` };
  const lastDay = addTerm(authorizedOn, validFor);
  if (completedOn > lastDay)
    return { kind: "missing", fix: `${given} ran out on ${dayInWords(lastDay)}: ask for a new one.` };
  if (authorizedOn > completedOn) {
    return { kind: "missing", fix: `${given} was given after the repair: ask whether it still holds.` };
  }
  return { kind: "in_place", found: `${given}, good through ${dayInWords(lastDay)}.` };
}

function whyNeeded(
  { job, partLines, attachments, earlier }: JobRecord,
  policy: Policy,
  { totalCents, lines }: ClaimAmounts,
): string | undefined {
  const { partsOverCents, claimOverCents, components, withoutProofOfPurchase } = policy.authorization;
  const { secondOf = [], diagnosisOnly = false } = policy.authorization;
  const { currency } = policy;
  const partsCents = partLines
    .filter((line) => line.role === "fitted")
    .reduce((total, line) => total + line.quantity * line.unitCost.cents, 0);
  if (partsOverCents !== undefined && partsCents > partsOverCents)
    return `parts are over ${centsInWords(partsOverCents, currency)}`;
  if (claimOverCents !== undefined && totalCents > claimOverCents)
    return `the claim is over ${centsInWords(claimOverCents, currency)}`;
  if (isOneOf(job.component, components)) return "this component always needs one";
  const first = isOneOf(job.component, secondOf)
    ? earlier.find((entry) => entry.fitted?.includes(job.component ?? ""))
    : undefined;
  if (first !== undefined) return `job ${first.jobNumber} fitted one of this component before`;
  if (diagnosisOnly && lines.some((line) => line.item === "diagnosis")) return "a diagnosis without a repair needs one";
  if (withoutProofOfPurchase && !attachments.some((attachment) => attachment.subject === "receipt")) {
    return "there is no proof of purchase";
  }
  return undefined;
}

function isOneOf(component: string | undefined, listed: readonly string[]): boolean {
  return component !== undefined && listed.includes(component);
}
