import { createHash } from "node:crypto";
import type { ClaimAct } from "@/lib/claims/life/claim-act";
import type { ClaimState } from "@/lib/claims/life/claim-standing";
import type { Transaction } from "../../database-types";
import { inTransaction } from "../../in-transaction";
import { answerOnce } from "../answer-once";
import { refreshUnclaimed } from "../money/refresh-unclaimed";
import { type Appended, appendEvent } from "./append-event";
import { type LockedClaim, lockClaim } from "./locked-claim";

/** What one form, or one request, asks to be recorded. */
export interface ActRequest {
  readonly claimNumber: string;
  /** Version of the claim that whoever asks has seen. */
  readonly seenVersion: number;
  /** The same however often this one request is sent. */
  readonly key: string;
  readonly by: string;
  readonly note: string;
  /** Instant, ISO text. */
  readonly at: string;
}

export type ActResult =
  | Appended
  | { readonly kind: "no such claim" }
  /** Somebody recorded something meanwhile: both versions, so that whoever asked can decide again. */
  | { readonly kind: "stale"; readonly seenVersion: number; readonly now: VersionNow }
  /** The same request is being worked on; ask again. */
  | { readonly kind: "running" }
  /** The key was used for another request. */
  | { readonly kind: "key used" };

export interface VersionNow {
  readonly version: number;
  readonly state: ClaimState;
  readonly what: ClaimAct["what"];
  readonly by: string;
  readonly at: string;
}

/** Records what happened to a claim: once, however often it is asked, and never over a version that was not seen. */
export async function actOnClaim(request: ActRequest, act: Exclude<ClaimAct, { what: "sent" | "built" }>) {
  return await recordOnce(request, act, (tx, claim) => appendEvent(tx, claim, { ...request, act }));
}

type Change<Refusal> = (tx: Transaction, claim: LockedClaim) => Promise<Appended | Refusal>;

/** @param asked all that tells this request from another one, to notice a key that is used twice */
export async function recordOnce<Refusal = never>(
  request: ActRequest,
  asked: unknown,
  change: Change<Refusal>,
): Promise<ActResult | Refusal> {
  const { claimNumber, seenVersion, by, note, key } = request;
  const bodyHash = createHash("sha256")
    .update(JSON.stringify([claimNumber, seenVersion, by, note, asked]))
    .digest("hex");
  let result: ActResult | Refusal = { kind: "no such claim" };
  const once = await answerOnce({ route: "claims/act", key, bodyHash }, async (store) => {
    await inTransaction(async (tx) => {
      const claim = await lockClaim(tx, claimNumber);
      if (claim === undefined) return;
      result = isStale(claim, seenVersion) ? staleOf(claim, seenVersion) : await change(tx, claim);
      if (isRecorded(result)) await refreshUnclaimed(tx, [claim.row.unitId]);
      if (isRecorded(result)) await store(tx, { status: 200, body: result });
    });
    return { status: 200, body: result };
  });
  if (once.kind === "other body") return { kind: "key used" };
  if (once.kind === "running") return { kind: "running" };
  return once.repeated ? (once.answer.body as ActResult) : result; // only a recorded result is ever stored
}

function isRecorded(result: unknown): boolean {
  return (result as { readonly kind?: unknown }).kind === "recorded"; // every case of a result has a kind
}

function isStale({ row }: LockedClaim, seenVersion: number): boolean {
  return row.version !== seenVersion;
}

function staleOf({ row, events }: LockedClaim, seenVersion: number): ActResult {
  const last = events.at(-1);
  if (last === undefined) throw new Error(`Claim ${row.claimNumber} has no events.`);
  const { act, by, at } = last;
  return { kind: "stale", seenVersion, now: { version: row.version, state: row.state, what: act.what, by, at } };
}
