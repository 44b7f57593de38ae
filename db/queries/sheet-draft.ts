import { sql } from "drizzle-orm";
import { type Sheet, sheetKey } from "@/lib/sheets/sheet";
import type { Reader } from "../database-types";

export interface SheetDraft {
  readonly document: unknown;
  readonly editedFrom: number;
  readonly revision: number;
  readonly savedAt: string;
  readonly savedBy: string;
}

/** What is being edited of a sheet and not published yet. */
export async function loadSheetDraft(
  db: Reader,
  sheet: Pick<Sheet, "productType" | "component">,
): Promise<SheetDraft | undefined> {
  const [draft] = await db.rows<{ [Key in keyof SheetDraft]: SheetDraft[Key] }>(sql`
    select document, edited_from as "editedFrom", revision, saved_at::text as "savedAt", saved_by as "savedBy"
    from sheet_drafts where sheet_key = ${sheetKey(sheet)}`);
  return draft;
}
