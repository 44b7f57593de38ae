import { and, eq, sql } from "drizzle-orm";
import type { RefusalReason } from "@/lib/claims/life/refusal-reason";
import { payerWords } from "@/lib/claims/remittance/payer-words";
import { inTransaction } from "../../in-transaction";
import { payerWordings, remittanceLines } from "../../schema/money";

export interface WordingToSet {
  readonly payer: string;
  readonly payerText: string;
  readonly reason: RefusalReason;
  readonly by: string;
  /** Instant, ISO text. */
  readonly at: string;
}

/**
 * Remembers what a payer's words mean: from now on, on every line of its lists that says so and is not posted, and in
 * the count of its reasons. What was posted keeps the reason it was posted with, and what was said before is kept.
 * @returns false where the same was said before
 */
export async function setWording({ payer, payerText, reason, by, at }: WordingToSet): Promise<boolean> {
  const words = payerWords(payerText);
  if (words === "") throw new RangeError("payerText: is blank");
  if (by.trim() === "") throw new RangeError("by: is blank");
  return await inTransaction(async (tx) => {
    await tx.rows(sql`select pg_advisory_xact_lock(hashtextextended(${`wording ${payer} ${words}`}, 0))::text`);
    const [last] = await tx.rows<{ version: number; reason: RefusalReason }>(sql`
      select version, reason from payer_wordings where payer = ${payer} and words = ${words} order by version desc limit 1`);
    if (last?.reason === reason) return false;
    const version = (last?.version ?? 0) + 1;
    await tx.insert(payerWordings).values({ payer, words, version, reason, setBy: by, setAt: at });
    const open = await tx.rows<{ list: number; row: number; text: string }>(sql`
      select l.remittance_id as list, l.row, l.payer_text as text from remittance_lines l join remittances r using (remittance_id)
      where r.payer = ${payer} and r.undone_at is null and l.fate not in ('posted', 'undone') and l.payer_text <> ''`);
    for (const { list, row } of open.filter(({ text }) => payerWords(text) === words))
      await tx
        .update(remittanceLines)
        .set({ reason })
        .where(and(eq(remittanceLines.remittanceId, list), eq(remittanceLines.row, row)));
    return true;
  });
}
