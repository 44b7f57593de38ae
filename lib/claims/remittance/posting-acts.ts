import type { Day } from "@/lib/calendar/day";
import type { ClaimAct, ClaimEvent, LineAmount } from "../life/claim-act";
import { claimStanding } from "../life/claim-standing";
import { actsAfter } from "../life/judge-act";
import type { RefusalReason } from "../life/refusal-reason";

/** What of one line of a list goes to one claim. */
export interface PaidShare {
  readonly row: number;
  /** Whole cents, 0 or more. */
  readonly lines: readonly LineAmount[];
  readonly isTakenBack: boolean;
  readonly payerText: string;
  /** Our reason for the payer's words; undefined where nobody has said yet. */
  readonly reason: RefusalReason | undefined;
}

/**
 * The acts that one list brings to one claim: money is a payment, preceded by the answer where it is less than was asked;
 * nothing at all is a rejection; money below zero is a charge-back, after the payment.
 * @returns the sentence why it cannot be posted, where more is paid than is open
 */
export function postingActs(
  events: readonly Pick<ClaimEvent, "number" | "act">[],
  shares: readonly PaidShare[],
  { on, reference }: { readonly on: Day; readonly reference: string },
): readonly ClaimAct[] | string {
  const standing = claimStanding(events);
  const given = shares.filter(({ isTakenBack }) => !isTakenBack);
  const taken = shares.filter(({ isTakenBack }) => isTakenBack);
  const paid = added(given);
  const acts: ClaimAct[] = [];
  const total = paid.reduce((sum, { cents }) => sum + cents, 0);
  for (const { line, askedCents, paidCents } of standing.lines) {
    const now = paid.find((each) => each.line === line)?.cents ?? 0;
    if (paidCents + now > askedCents)
      return `line ${line} would be paid more than was asked. It may be a second payment: ask the payer, or set the line aside.`;
  }
  const mayAnswer = actsAfter[standing.state].includes("answered");
  const reason = given.find((share) => share.reason !== undefined)?.reason;
  const payerText = textOf(given);
  if (given.length > 0 && total === 0) {
    if (!mayAnswer) return `a claim that is ${standing.state} waits for no answer.`;
    acts.push({ what: "answered", on, answer: { kind: "rejected", reason: reason ?? "other", payerText } });
  }
  if (total > 0) {
    const isShort = standing.paidCents + total < standing.askedCents;
    if (isShort && mayAnswer && payerText !== "")
      acts.push({
        what: "answered",
        on,
        answer: { kind: "approved", lines: whole(standing.lines, paid), reason, payerText },
      });
    acts.push({ what: "paid", on, reference, lines: paid.filter(({ cents }) => cents > 0) });
  }
  if (taken.length > 0) {
    const why = taken.find((share) => share.reason !== undefined)?.reason ?? "other";
    acts.push({ what: "clawed back", on, reference, reason: why, payerText: textOf(taken), lines: added(taken) });
  }
  return acts;
}

/** An approval speaks of every line, also of those that get nothing. */
function whole(lines: readonly { readonly line: number }[], paid: readonly LineAmount[]): readonly LineAmount[] {
  return lines.map(({ line }) => ({ line, cents: paid.find((each) => each.line === line)?.cents ?? 0 }));
}

function added(shares: readonly PaidShare[]): readonly LineAmount[] {
  const cents = new Map<number, number>();
  for (const each of shares.flatMap(({ lines }) => lines))
    cents.set(each.line, (cents.get(each.line) ?? 0) + each.cents);
  return [...cents].map(([line, sum]) => ({ line, cents: sum }));
}

function textOf(shares: readonly PaidShare[]): string {
  return [...new Set(shares.map(({ payerText }) => payerText).filter((text) => text !== ""))].join("; ");
}
