import { and, eq, sql } from "drizzle-orm";
import { standingEvents } from "@/lib/claims/life/claim-standing";
import { judgeAct } from "@/lib/claims/life/judge-act";
import type { Transaction } from "../../database-types";
import { inTransaction } from "../../in-transaction";
import { remittanceLines, remittances } from "../../schema/money";
import { appendEvent } from "../claims/append-event";
import { lockClaim } from "../claims/locked-claim";
import { lockRemittance, type RemittanceRow } from "./locked-remittance";
import { refreshUnclaimed } from "./refresh-unclaimed";

export interface UndoRequest {
  readonly remittanceId: number;
  readonly by: string;
  readonly reason: string;
  readonly at: string;
}

export type Undone =
  | { readonly kind: "undone"; readonly claims: number }
  /** Something rests on a payment of this list; nothing was taken back. */
  | { readonly kind: "refused"; readonly sentences: readonly string[] };

/** Takes a posted list back whole, by an event for each of its own; where a later act rests on one, that one is named. */
export async function undoRemittance(request: UndoRequest): Promise<Undone> {
  const { remittanceId } = request;
  return await inTransaction(async (tx) => {
    const list = await lockRemittance(tx, remittanceId);
    if (list === undefined || list.undoneAt !== null)
      return refuse(["This list is no longer on file, or was taken back."]);
    const posted = await tx.rows<{ claim_number: string; event: number }>(sql`
      select c.claim_number, max(p.event) as event from remittance_postings p join claims c using (unit_id, claim_id)
      join remittance_lines l using (remittance_id, row) where p.remittance_id = ${remittanceId} and l.fate = 'posted' group by 1 order by 1`);
    const problems: string[] = [];
    const units: string[] = [];
    for (const { claim_number, event } of posted) {
      const found = await undoOne(tx, list, claim_number, event, request);
      if ("sentence" in found) problems.push(`${claim_number}: ${found.sentence}`);
      else units.push(found.unitId);
    }
    if (problems.length > 0) throw new NotUndone(problems);
    await tx
      .update(remittanceLines)
      .set({ fate: "undone" })
      .where(and(eq(remittanceLines.remittanceId, remittanceId), eq(remittanceLines.fate, "posted")));
    await tx
      .update(remittances)
      .set({ undoneAt: request.at, undoneBy: request.by, version: list.version + 1 })
      .where(eq(remittances.remittanceId, remittanceId));
    await refreshUnclaimed(tx, units);
    return { kind: "undone", claims: posted.length } as const;
  }).catch((error: unknown) => {
    if (error instanceof NotUndone) return refuse(error.sentences);
    throw error;
  });
}

/** Rolls everything back: a list is taken back whole or not at all. */
class NotUndone extends Error {
  constructor(readonly sentences: readonly string[]) {
    super(sentences.join(" "));
  }
}

/** A list may have brought an answer and a payment: both are taken back, the later one first. */
async function undoOne(
  tx: Transaction,
  list: RemittanceRow,
  claimNumber: string,
  lastEvent: number,
  { by, at, reason }: UndoRequest,
): Promise<{ readonly unitId: string } | { readonly sentence: string }> {
  let claim = await lockClaim(tx, claimNumber);
  if (claim === undefined) return { sentence: "it is no longer on file." };
  const entered = claim.events.find(({ number }) => number === lastEvent);
  const own = standingEvents(claim.events)
    .filter(({ number, note, at: when }) => number <= lastEvent && note === entered?.note && when === entered.at)
    .sort((a, b) => b.number - a.number);
  for (const { number } of own) {
    const act = { what: "undone", event: number, reason } as const;
    const refusal = judgeAct(claim.events, act);
    if (refusal !== undefined) return refusal;
    await appendEvent(tx, claim, { act, by, at, note: `List ${list.fileName} taken back` });
    claim = (await lockClaim(tx, claimNumber)) ?? claim;
  }
  return { unitId: claim.row.unitId };
}

function refuse(sentences: readonly string[]): Undone {
  return { kind: "refused", sentences };
}
