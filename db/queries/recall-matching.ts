import { desc, eq, sql } from "drizzle-orm";
import type { Matching, TargetColumn } from "@/lib/intake/matching/matching";
import type { TableForm } from "@/lib/intake/tables/table-form";
import type { Reader } from "../database-types";
import { rememberedMatchings } from "../schema/drafts";
import { fingerprintOf } from "../writes/remember-matching";

export type RecalledMatching =
  /** The same header came before; nothing is left to ask. */
  | { readonly kind: "same"; readonly form: TableForm; readonly matching: Matching }
  /** A header that shares most of its columns; the others are open. */
  | { readonly kind: "similar"; readonly form: TableForm; readonly matching: Matching; readonly shared: number }
  | { readonly kind: "none" };

/** The matching that was accepted last for a file with this header, or else with the one most like it. */
export async function recallMatching(db: Reader, header: readonly string[]): Promise<RecalledMatching> {
  const [same] = await db
    .select()
    .from(rememberedMatchings)
    .where(eq(rememberedMatchings.fingerprint, fingerprintOf(header)));
  if (same !== undefined) return { kind: "same", form: same.form, matching: same.matching };
  const shared = sql<number>`(select count(*) from unnest(${rememberedMatchings.headers}) h where lower(trim(h)) in
    (select lower(trim(n)) from jsonb_array_elements_text(${JSON.stringify(header)}::jsonb) n))`.mapWith(Number);
  const [like] = await db
    .select({ form: rememberedMatchings.form, matching: rememberedMatchings.matching, shared })
    .from(rememberedMatchings)
    .orderBy(desc(shared), desc(rememberedMatchings.usedAt))
    .limit(1);
  if (like === undefined || like.shared * 2 <= header.length) return { kind: "none" };
  return { kind: "similar", ...like };
}

/** What words were last said to mean, by column of ours. */
export async function recallWords(
  db: Reader,
): Promise<Readonly<Record<TargetColumn, Readonly<Record<string, string>>>>> {
  const rows = await db.rows<{ column: string; words: Record<string, string> }>(
    sql`select "column", jsonb_object_agg(word, meaning) as words from remembered_words group by 1`,
  );
  return Object.fromEntries(rows.map(({ column, words }) => [column, words]));
}
