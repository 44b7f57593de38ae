import { sql } from "drizzle-orm";
import { type Sheet, sheetKey } from "@/lib/sheets/sheet";
import { inTransaction } from "../../in-transaction";

export interface SheetDraftSaving {
  readonly sheet: Pick<Sheet, "productType" | "component">;
  readonly editedFrom: number;
  /** Of the draft that the editor showed; 0 where it showed none. */
  readonly revision: number;
  readonly document: { readonly steps: readonly unknown[] };
  readonly by: string;
}

export type SheetDraftSaved =
  | { readonly kind: "saved"; readonly revision: number }
  /** Somebody saved, dropped or published in between: nothing is changed. */
  | { readonly kind: "moved on"; readonly by: string | undefined };

/** Keeps what is being edited, whether it could be published or not. */
export async function saveSheetDraft(saving: SheetDraftSaving): Promise<SheetDraftSaved> {
  const { sheet, editedFrom, revision, document, by } = saving;
  const key = sheetKey(sheet);
  return await inTransaction(async (tx): Promise<SheetDraftSaved> => {
    await tx.rows(sql`select pg_advisory_xact_lock(hashtextextended(${`sheet ${key}`}, 0))::text`);
    const [known] = await tx.rows<{ revision: number; by: string }>(
      sql`select revision, saved_by as by from sheet_drafts where sheet_key = ${key}`,
    );
    if ((known?.revision ?? 0) !== revision) return { kind: "moved on", by: known?.by };
    await tx.execute(sql`
      insert into sheet_drafts (sheet_key, edited_from, document, revision, saved_at, saved_by)
      values (${key}, ${editedFrom}, ${JSON.stringify(document)}::jsonb, ${revision + 1}, now(), ${by})
      on conflict (sheet_key) do update set document = excluded.document, revision = excluded.revision, saved_at = excluded.saved_at,
        saved_by = excluded.saved_by, edited_from = excluded.edited_from`);
    return { kind: "saved", revision: revision + 1 };
  });
}

/** False where there was none, or another than was shown. */
export async function dropSheetDraft(
  sheet: Pick<Sheet, "productType" | "component">,
  revision: number,
): Promise<boolean> {
  return await inTransaction(async (tx) => {
    const dropped = await tx.rows(
      sql`delete from sheet_drafts where sheet_key = ${sheetKey(sheet)} and revision = ${revision} returning sheet_key`,
    );
    return dropped.length > 0;
  });
}
