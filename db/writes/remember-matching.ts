import { createHash } from "node:crypto";
import { sql } from "drizzle-orm";
import { headerFingerprint } from "@/lib/intake/matching/header-fingerprint";
import type { Matching } from "@/lib/intake/matching/matching";
import type { TableForm } from "@/lib/intake/tables/table-form";
import { inTransaction } from "../in-transaction";
import { rememberedMatchings } from "../schema/drafts";

/** Keeps an accepted matching for the next file with the same header, and what words were said to mean for every file. */
export async function rememberMatching({ form, matching }: { form: TableForm; matching: Matching }): Promise<void> {
  const headers = matching.columns.map(({ source }) => source);
  const row = { kind: matching.kind, headers, form, matching, usedAt: new Date().toISOString() };
  const words = Object.entries(matching.words).flatMap(([column, meanings]) =>
    Object.entries(meanings).map(([word, meaning]) => ({ column, word, meaning })),
  );
  await inTransaction(async (tx) => {
    await tx
      .insert(rememberedMatchings)
      .values({ fingerprint: fingerprintOf(headers), ...row })
      .onConflictDoUpdate({ target: rememberedMatchings.fingerprint, set: row });
    await tx.execute(sql`
      insert into remembered_words ("column", word, meaning, used_at)
      select "column", word, meaning, now() from jsonb_to_recordset(${JSON.stringify(words)}::jsonb) as w("column" text, word text, meaning text)
      on conflict ("column", word) do update set meaning = excluded.meaning, used_at = excluded.used_at`);
  });
}

/** One key for all headers that hold the same columns in the same order. */
export function fingerprintOf(header: readonly string[]): string {
  return createHash("sha256").update(headerFingerprint(header)).digest("hex");
}
