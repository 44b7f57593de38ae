import { and, eq } from "drizzle-orm";
import type { ClaimAct } from "@/lib/claims/life/claim-act";
import { type ClaimStanding, type ClaimState, claimStanding } from "@/lib/claims/life/claim-standing";
import { claimDeadlines, judgeAct } from "@/lib/claims/life/judge-act";
import type { Transaction } from "../../database-types";
import { claimEvents } from "../../schema/claim-life";
import { claimLines, claims } from "../../schema/claims";
import type { LockedClaim } from "./locked-claim";

/** An act with who entered it when and why. */
export interface EventToAppend {
  readonly act: ClaimAct;
  readonly by: string;
  readonly note: string;
  /** Instant, ISO text. */
  readonly at: string;
}

export type Appended =
  | { readonly kind: "recorded"; readonly claimNumber: string; readonly version: number; readonly state: ClaimState }
  | { readonly kind: "refused"; readonly sentence: string };

/** Adds one event and sets state, sums and days of the claim to what follows from all of its events. */
export async function appendEvent(tx: Transaction, claim: LockedClaim, event: EventToAppend): Promise<Appended> {
  const { row, events, policy } = claim;
  const refusal = judgeAct(events, event.act);
  if (refusal !== undefined) return { kind: "refused", sentence: refusal.sentence };
  const number = events.length + 1;
  const standing = claimStanding([...events, { number, act: event.act }]);
  const { unitId, claimId } = row;
  await tx.insert(claimEvents).values({
    unitId,
    claimId,
    event: number,
    at: event.at,
    by: event.by,
    what: event.act.what,
    act: event.act,
    note: event.note,
    submission: standing.filings === 0 ? null : standing.filings,
    sentSha256: event.act.what === "sent" ? event.act.sha256 : null,
  });
  const version = row.version + 1;
  const { resubmitBy, keepPartUntil } = claimDeadlines(standing, policy.clocks);
  await tx
    .update(claims)
    .set({
      ...storedStanding(standing, row.claimedCents),
      payerReference: referenceOf(event.act) ?? row.payerReference,
      resubmitBy: resubmitBy ?? null,
      keepPartUntil: keepPartUntil ?? null,
      version,
    })
    .where(and(eq(claims.unitId, unitId), eq(claims.claimId, claimId)));
  for (const { line, approvedCents, paidCents, clawedBackCents } of standing.lines) {
    await tx
      .update(claimLines)
      .set({ approvedCents: approvedCents ?? null, paidCents, clawedBackCents })
      .where(and(eq(claimLines.unitId, unitId), eq(claimLines.claimId, claimId), eq(claimLines.line, line)));
  }
  return { kind: "recorded", claimNumber: row.claimNumber, version, state: standing.state };
}

/** What the columns of a claim must hold after its events. @param builtCents of the draft, which asks for nothing yet */
export function storedStanding(standing: ClaimStanding, builtCents: number) {
  return {
    state: standing.state,
    claimedCents: standing.filings === 0 ? builtCents : standing.askedCents,
    approvedCents: standing.approvedCents ?? null,
    paidCents: standing.paidCents,
    clawedBackCents: standing.clawedBackCents,
    openCents: standing.openCents,
    submission: standing.filings === 0 ? null : standing.filings,
    firstSentOn: standing.firstSentOn ?? null,
    lastSentOn: standing.lastSentOn ?? null,
    answeredOn: standing.answeredOn ?? null,
    paidOn: standing.paidOn ?? null,
  };
}

function referenceOf(act: ClaimAct): string | undefined {
  return act.what === "received" ? act.payerReference : undefined;
}
