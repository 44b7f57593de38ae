import { and, eq, inArray } from "drizzle-orm";
import type { ClaimAct, LineAmount } from "@/lib/claims/life/claim-act";
import { judgeAct } from "@/lib/claims/life/judge-act";
import { type PaidShare, postingActs } from "@/lib/claims/remittance/posting-acts";
import type { Transaction } from "../../database-types";
import { inTransaction } from "../../in-transaction";
import { remittanceLines, remittancePostings, remittances } from "../../schema/money";
import { appendEvent } from "../claims/append-event";
import { type LockedClaim, lockClaim } from "../claims/locked-claim";
import { lockRemittance, type RemittanceRow } from "./locked-remittance";
import { refreshUnclaimed } from "./refresh-unclaimed";

export interface PostingRequest {
  readonly remittanceId: number;
  /** Version of the list that whoever asks has seen. */
  readonly seenVersion: number;
  readonly by: string;
  /** Instant, ISO text. */
  readonly at: string;
}

export type Posted =
  | { readonly kind: "posted"; readonly lines: number; readonly claims: number; readonly toTray: number }
  | { readonly kind: "refused"; readonly sentence: string };

type Line = typeof remittanceLines.$inferSelect;

/**
 * Posts every line that is ready, all in one transaction: what several lines say of one claim becomes one payment of it.
 * A claim that cannot take its payment sends its lines to the tray with the reason, and keeps no other from being posted.
 */
export async function postRemittance({ remittanceId, seenVersion, by, at }: PostingRequest): Promise<Posted> {
  return await inTransaction(async (tx) => {
    const list = await lockRemittance(tx, remittanceId);
    if (list === undefined || list.undoneAt !== null)
      return refuse("This list is no longer on file, or was taken back.");
    if (list.version !== seenVersion) return refuse("Somebody changed this list meanwhile. Look at it again.");
    const ready = await tx
      .select()
      .from(remittanceLines)
      .where(and(eq(remittanceLines.remittanceId, remittanceId), eq(remittanceLines.fate, "ready")))
      .orderBy(remittanceLines.row);
    const groups = linkedLines(ready);
    let claims = 0;
    let toTray = 0;
    const touched: string[] = [];
    for (const lines of groups) {
      const result = await postTogether(tx, list, lines, { by, at });
      if (typeof result === "string") toTray += await sendToTray(tx, lines, result);
      else {
        claims += result.length;
        touched.push(...result.map(({ row }) => row.unitId));
      }
    }
    await tx
      .update(remittances)
      .set({ version: list.version + 1 })
      .where(eq(remittances.remittanceId, remittanceId));
    await refreshUnclaimed(tx, touched);
    return { kind: "posted", lines: ready.length - toTray, claims, toTray };
  });
}

/** Lines that share a claim are posted together or not at all. */
function linkedLines(lines: readonly Line[]): readonly (readonly Line[])[] {
  const groups: { readonly claims: Set<string>; readonly lines: Line[] }[] = [];
  for (const line of lines) {
    const claims = (line.shares ?? []).map(({ claimNumber }) => claimNumber);
    const linked = groups.filter((group) => claims.some((claim) => group.claims.has(claim)));
    const joined = {
      claims: new Set([...claims, ...linked.flatMap((group) => [...group.claims])]),
      lines: [...linked.flatMap((group) => group.lines), line],
    };
    for (const group of linked) groups.splice(groups.indexOf(group), 1);
    groups.push(joined);
  }
  return groups.map((group) => group.lines);
}

/** @returns the claims that were paid, or the sentence why none of them was */
async function postTogether(
  tx: Transaction,
  list: RemittanceRow,
  lines: readonly Line[],
  { by, at }: Pick<PostingRequest, "by" | "at">,
): Promise<readonly LockedClaim[] | string> {
  const numbers = [
    ...new Set(lines.flatMap(({ shares }) => (shares ?? []).map(({ claimNumber }) => claimNumber))),
  ].sort();
  const planned: {
    readonly claim: LockedClaim;
    readonly acts: readonly ClaimAct[];
    readonly rows: readonly number[];
  }[] = [];
  for (const number of numbers) {
    const claim = await lockClaim(tx, number);
    if (claim === undefined) return `${number} is no longer on file.`;
    const paid = lines.flatMap((line) => sharesOf(line, number));
    const plan = postingActs(claim.events, paid, { on: list.paidOn, reference: list.reference });
    if (typeof plan === "string") return `${number}: ${plan}`;
    const refusal = refusalOf(claim, plan);
    if (refusal !== undefined) return `${number}: ${refusal}`;
    planned.push({ claim, acts: plan, rows: [...new Set(paid.map(({ row }) => row))] });
  }
  for (const { claim, acts, rows } of planned) {
    const last = await append(tx, claim, acts, { by, at, note: `List ${list.fileName}, ${rowsInWords(rows)}` });
    const { unitId, claimId } = claim.row;
    const { remittanceId } = list;
    await tx
      .insert(remittancePostings)
      .values(rows.map((row) => ({ remittanceId, row, unitId, claimId, event: last })));
  }
  await tx
    .update(remittanceLines)
    .set({ fate: "posted" })
    .where(
      and(
        eq(remittanceLines.remittanceId, list.remittanceId),
        inArray(
          remittanceLines.row,
          lines.map(({ row }) => row),
        ),
      ),
    );
  return planned.map(({ claim }) => claim);
}

function sharesOf({ row, shares, paidCents, payerText, reason }: Line, claimNumber: string): readonly PaidShare[] {
  return (shares ?? [])
    .filter((share) => share.claimNumber === claimNumber)
    .map(({ lines }) => ({
      row,
      lines: lines as readonly LineAmount[],
      isTakenBack: (paidCents ?? 0) < 0,
      payerText,
      reason: reason ?? undefined,
    }));
}

function refusalOf({ events }: LockedClaim, acts: readonly ClaimAct[]): string | undefined {
  let so: readonly { readonly number: number; readonly act: ClaimAct }[] = events;
  for (const act of acts) {
    const refusal = judgeAct(so, act);
    if (refusal !== undefined) return refusal.sentence;
    so = [...so, { number: so.length + 1, act }];
  }
  return undefined;
}

/** @returns the number of the last event */
async function append(
  tx: Transaction,
  claim: LockedClaim,
  acts: readonly ClaimAct[],
  entered: { readonly by: string; readonly at: string; readonly note: string },
): Promise<number> {
  let now = claim;
  for (const act of acts) {
    const result = await appendEvent(tx, now, { act, ...entered });
    if (result.kind === "refused") throw new Error(`Judged and then refused: ${result.sentence}`);
    const number = now.events.length + 1;
    const event = { number, act, ...entered };
    now = { ...now, row: { ...now.row, version: result.version }, events: [...now.events, event] };
  }
  return now.events.length;
}

async function sendToTray(tx: Transaction, lines: readonly Line[], sentence: string): Promise<number> {
  for (const { remittanceId, row } of lines)
    await tx
      .update(remittanceLines)
      .set({ fate: "tray", shares: null, sentence })
      .where(and(eq(remittanceLines.remittanceId, remittanceId), eq(remittanceLines.row, row)));
  return lines.length;
}

function rowsInWords(rows: readonly number[]): string {
  return rows.length === 1 ? `row ${rows[0]}` : `rows ${rows.join(", ")}`;
}

function refuse(sentence: string): Posted {
  return { kind: "refused", sentence };
}
