import { sql } from "drizzle-orm";
import type { RefusalReason } from "@/lib/claims/life/refusal-reason";
import { payerWords } from "@/lib/claims/remittance/payer-words";
import type { Reader } from "../database-types";

/** One saying of what a payer's words mean. */
export interface WordingVersion {
  readonly version: number;
  readonly reason: RefusalReason;
  readonly setBy: string;
  /** Instant, ISO text. */
  readonly setAt: string;
}

/** What was said of one payer's words, the latest first; the function takes the words as they stand in a list. */
export async function loadWordingVersions(
  db: Reader,
  payer: string,
): Promise<(payerText: string) => readonly WordingVersion[]> {
  const rows = await db.rows<Row>(sql`
    select words, version, reason, set_by as "setBy", set_at::text as "setAt" from payer_wordings
    where payer = ${payer} order by words, version desc`);
  const known = new Map<string, WordingVersion[]>();
  for (const row of rows) known.set(row.words, [...(known.get(row.words) ?? []), row]);
  return (payerText) => known.get(payerWords(payerText)) ?? [];
}

type Row = { words: string; version: number; reason: RefusalReason; setBy: string; setAt: string };
