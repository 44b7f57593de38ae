import { and, eq } from "drizzle-orm";
import type { ClaimShare } from "@/lib/claims/remittance/remittance-line";
import { splitPayment } from "@/lib/claims/remittance/split-payment";
import { inTransaction } from "../../in-transaction";
import { loadAwaitedClaims } from "../../queries/money-awaited";
import { remittanceLines, remittances } from "../../schema/money";
import { lockRemittance } from "./locked-remittance";

export type LineDecision =
  /** The claim that was proposed is the right one. */
  | { readonly say: "yes" }
  | { readonly say: "claim"; readonly claimNumber: string }
  | { readonly say: "aside"; readonly why: string }
  /** Back to the tray. */
  | { readonly say: "no" };

export interface LineToDecide {
  readonly remittanceId: number;
  readonly row: number;
  readonly decision: LineDecision;
  readonly by: string;
}

export type DecidedLine = { readonly kind: "decided" } | { readonly kind: "refused"; readonly sentence: string };

/** What becomes of one line that nothing or nobody was sure of. Lines that are posted are left alone. */
export async function decideLine({ remittanceId, row, decision, by }: LineToDecide): Promise<DecidedLine> {
  return await inTransaction(async (tx) => {
    const list = await lockRemittance(tx, remittanceId);
    const here = and(eq(remittanceLines.remittanceId, remittanceId), eq(remittanceLines.row, row));
    const [line] = await tx.select().from(remittanceLines).where(here);
    if (list === undefined || line === undefined) return refuse("This line is no longer on file.");
    if (line.fate === "posted" || line.fate === "undone") return refuse(`Row ${row} is posted already.`);
    const set = async (to: Partial<typeof remittanceLines.$inferInsert>): Promise<DecidedLine> => {
      await tx
        .update(remittanceLines)
        .set({ ...to, decidedBy: by })
        .where(here);
      await tx
        .update(remittances)
        .set({ version: list.version + 1 })
        .where(eq(remittances.remittanceId, remittanceId));
      return { kind: "decided" };
    };
    switch (decision.say) {
      case "yes":
        if (line.shares === null) return refuse("No claim is proposed for this line. Name one.");
        return await set({ fate: "ready" });
      case "no":
        return await set({
          fate: line.paidCents === null ? "unreadable" : "tray",
          shares: null,
          sentence: `${by} put it into the tray.`,
        });
      case "aside":
        if (decision.why.trim() === "") return refuse("Say why the line is set aside.");
        return await set({ fate: "set aside", shares: null, sentence: decision.why.trim() });
      case "claim": {
        if (line.paidCents === null || line.currency === null)
          return refuse(`Row ${row} could not be read. Mend it in the file, or set it aside.`);
        const number = decision.claimNumber.trim().toUpperCase();
        const claim = (await loadAwaitedClaims(tx, list.payer)).find(
          (each) => each.claimNumber.toUpperCase() === number,
        );
        if (claim === undefined) return refuse(`${number} is no claim on ${list.payer} that was sent.`);
        if (claim.currency !== line.currency)
          return refuse(`${number} is in ${claim.currency}; row ${row} pays in ${line.currency}.`);
        const split = splitPayment({ item: undefined, paidCents: line.paidCents }, claim.lines);
        if (split === undefined) return refuse(`${number} asks for nothing.`);
        const shares: ClaimShare[] = [{ claimNumber: claim.claimNumber, ...split }];
        return await set({ fate: "ready", shares, sentence: `${by} named the claim.` });
      }
    }
  });
}

function refuse(sentence: string): DecidedLine {
  return { kind: "refused", sentence };
}
