import type { Day } from "@/lib/calendar/day";
import { dayInWords } from "@/lib/calendar/day-words";
import { addTerm } from "@/lib/calendar/term";
import type { Currency } from "@/lib/domain/money";
import type { PolicyClocks } from "@/lib/domain/policy-clocks";
import type { ClaimStanding, LineStanding } from "../life/claim-standing";
import { centsInWords } from "../money-words";
import { openOf } from "../remittance/split-payment";
import { nothing } from "./cents-by-item";
import { type Leak, type LeakFound, totalCents } from "./leak";

export interface FiledClaim {
  readonly claimNumber: string;
  readonly payer: string;
  readonly currency: Currency;
  readonly standing: Pick<ClaimStanding, "state" | "lines" | "answeredOn" | "paidOn">;
  /** Last day for a corrected claim, while it waits for one. */
  readonly resubmitBy: Day | undefined;
  readonly clocks: PolicyClocks;
}

/**
 * Money of a claim that the payer kept and nobody pursues: refused and not corrected, cut and not disputed, a part whose
 * credit never came, or taken back. A claim that is appealed is pursued, and one that was written off was given up.
 * The last day to dispute is the policy's own for resubmission, counted from the answer: common practice, no source.
 */
export function filedLeaks(claim: FiledClaim): readonly LeakFound[] {
  const { standing } = claim;
  switch (standing.state) {
    case "rejected":
    case "needs correction":
      return found(claim, "not corrected", standing.lines, openOf, claim.resubmitBy);
    case "approved":
      return found(claim, "short-paid", standing.lines, cutOf, disputeBy(claim));
    case "short-paid": {
      const uncredited = uncreditedParts(standing.lines);
      const cut = standing.lines.filter((line) => !uncredited.includes(line));
      return [
        ...found(claim, "part credit", uncredited, openOf, disputeBy(claim)),
        ...found(claim, "short-paid", cut, openOf, disputeBy(claim)),
      ];
    }
    case "clawed back":
      return found(claim, "charged back", standing.lines, (line) => line.clawedBackCents, undefined);
    default:
      return [];
  }
}

function found(
  claim: FiledClaim,
  leak: Leak,
  lines: readonly LineStanding[],
  of: (line: LineStanding) => number,
  dueOn: Day | undefined,
): readonly LeakFound[] {
  const cents = nothing();
  for (const line of lines) cents[line.item] += of(line);
  if (totalCents(cents) === 0) return [];
  const { claimNumber, payer, currency } = claim;
  return [{ leak, claimNumber, payer, currency, dueOn, cents, missing: [], reason: reasonOf(leak, claim, cents) }];
}

/** Where parts and labour are paid apart, a credit for the part can be missing although the labour was paid. */
function uncreditedParts(lines: readonly LineStanding[]): readonly LineStanding[] {
  const isPart = ({ item }: LineStanding) => item === "parts" || item === "handling";
  const wasOtherPaid = lines.some((line) => !isPart(line) && line.paidCents > 0);
  const wasPartPaid = lines.some((line) => isPart(line) && line.paidCents > 0);
  return wasOtherPaid && !wasPartPaid ? lines.filter(isPart) : [];
}

function cutOf({ askedCents, approvedCents }: LineStanding): number {
  return Math.max(0, askedCents - (approvedCents ?? askedCents));
}

function disputeBy({ standing, clocks }: FiledClaim): Day | undefined {
  const from = standing.answeredOn ?? standing.paidOn;
  return from === undefined ? undefined : addTerm(from, clocks.resubmission.within);
}

function reasonOf(leak: Leak, claim: FiledClaim, cents: LeakFound["cents"]): string {
  const { claimNumber, payer, standing, currency } = claim;
  const money = centsInWords(totalCents(cents), currency);
  const on = standing.answeredOn ?? standing.paidOn;
  const when = on === undefined ? "" : ` on ${dayInWords(on)}`;
  switch (leak) {
    case "not corrected":
      return `${payer} sent ${claimNumber} back${when}; ${money} of it was neither corrected nor given up.`;
    case "part credit":
      return `${payer} paid the work of ${claimNumber}${when}, but no credit of ${money} for the part was posted.`;
    case "charged back":
      return `${payer} took ${money} of ${claimNumber} back, and nobody has appealed.`;
    default:
      return `${payer} left ${money} of ${claimNumber} unpaid${when}, and nobody has disputed it.`;
  }
}
