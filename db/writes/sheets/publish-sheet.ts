import { sql } from "drizzle-orm";
import { type Sheet, sheetKey } from "@/lib/sheets/sheet";
import { inTransaction } from "../../in-transaction";

export interface EditedSheet {
  readonly sheet: Sheet;
  /** The version that the editor showed: where another was published meanwhile, nothing is. */
  readonly editedFrom: number;
  /** Of the draft that the editor showed; 0 where it showed none. */
  readonly revision: number;
  readonly by: string;
  readonly reason: string;
}

export type PublishedSheet =
  | { readonly kind: "published"; readonly version: number }
  | { readonly kind: "moved on"; readonly version: number }
  /** Somebody saved another draft meanwhile, which publishing would throw away. */
  | { readonly kind: "draft moved on"; readonly by: string };

/** A new version of a sheet, in force for jobs that are begun from now on; those that are under way keep theirs. Its draft is done. */
export async function publishSheet({ sheet, editedFrom, revision, by, reason }: EditedSheet): Promise<PublishedSheet> {
  const key = sheetKey(sheet);
  return await inTransaction(async (tx): Promise<PublishedSheet> => {
    await tx.rows(sql`select pg_advisory_xact_lock(hashtextextended(${`sheet ${key}`}, 0))::text`);
    const [latest] = await tx.rows<{ version: number }>(
      sql`select coalesce(max(version), 1)::integer as version from sheet_versions where sheet_key = ${key}`,
    );
    const current = latest?.version ?? 1;
    if (current !== editedFrom) return { kind: "moved on", version: current };
    const [draft] = await tx.rows<{ revision: number; by: string }>(
      sql`select revision, saved_by as by from sheet_drafts where sheet_key = ${key}`,
    );
    if (draft !== undefined && draft.revision !== revision) return { kind: "draft moved on", by: draft.by };
    await tx.execute(sql`
      insert into sheet_versions (sheet_key, version, document, published_at, by, reason)
      values (${key}, ${current + 1}, ${JSON.stringify({ steps: sheet.steps })}::jsonb, now(), ${by}, ${reason})`);
    await tx.execute(sql`delete from sheet_drafts where sheet_key = ${key}`);
    return { kind: "published", version: current + 1 };
  });
}
