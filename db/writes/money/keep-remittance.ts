import { createHash } from "node:crypto";
import { mkdtemp, rm, writeFile } from "node:fs/promises";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { sql } from "drizzle-orm";
import type { Day } from "@/lib/calendar/day";
import type { Currency } from "@/lib/domain/money";
import type { FileProblem } from "@/lib/intake/parsed";
import { guessRemittanceColumns } from "@/lib/intake/remittances/guess-remittance-columns";
import { lookAtTable } from "@/lib/intake/tables/look-at-table";
import { inTransaction } from "../../in-transaction";
import { remittances } from "../../schema/money";

export interface RemittanceToKeep {
  readonly fileName: string;
  readonly content: Buffer;
  readonly payer: string;
  /** Number of the payment. */
  readonly reference: string;
  readonly paidOn: Day;
  readonly currency: Currency;
  readonly by: string;
  /** Instant, ISO text. */
  readonly at: string;
  readonly today: Day;
}

export type KeptRemittance =
  | { readonly kind: "kept"; readonly remittanceId: number }
  /** The same bytes are here already. */
  | { readonly kind: "known"; readonly remittanceId: number }
  | { readonly kind: "unreadable"; readonly problems: readonly FileProblem[] };

/** Keeps a payer's list as it came, with its columns guessed; no line is read before somebody has confirmed them. */
export async function keepRemittance(asked: RemittanceToKeep): Promise<KeptRemittance> {
  const fileSha256 = createHash("sha256").update(asked.content).digest("hex");
  const looked = await atPath(asked.content, (path) => lookAtTable(path));
  if (!looked.ok) return { kind: "unreadable", problems: looked.problems };
  const { form, header, sample, rows } = looked.look;
  if (rows === 0)
    return {
      kind: "unreadable",
      problems: [{ problem: "The file has a heading but no line.", fix: "Export it anew." }],
    };
  const { columns } = guessRemittanceColumns(header, sample, asked.today);
  return await inTransaction(async (tx) => {
    await tx.rows(sql`select pg_advisory_xact_lock(hashtextextended('remittance ' || ${fileSha256}, 0))::text`);
    const [known] = await tx.rows<{ id: number }>(
      sql`select remittance_id as id from remittances where file_sha256 = ${fileSha256} and undone_at is null`,
    );
    if (known !== undefined) return { kind: "known", remittanceId: known.id };
    const { fileName, content, payer, reference, paidOn, currency, by, at } = asked;
    const given = { fileName, fileSha256, content, payer, reference, paidOn, currency, form, header, columns };
    const [kept] = await tx
      .insert(remittances)
      .values({ ...given, receivedAt: at, receivedBy: by, version: 1 })
      .returning({ id: remittances.remittanceId });
    if (kept === undefined) throw new Error("The list was stored without a number.");
    return { kind: "kept", remittanceId: kept.id };
  });
}

/** The readers of tables read files; the bytes lie in one for as long as they are read. */
export async function atPath<T>(content: Buffer, read: (path: string) => Promise<T>): Promise<T> {
  const folder = await mkdtemp(join(tmpdir(), "ohmsworth-list-"));
  try {
    const path = join(folder, "content");
    await writeFile(path, content, { mode: 0o600 });
    return await read(path);
  } finally {
    await rm(folder, { recursive: true, force: true });
  }
}
