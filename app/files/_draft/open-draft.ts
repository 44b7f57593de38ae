import { desc, eq, sql } from "drizzle-orm";
import { readOnly } from "@/db/client";
import { inTransaction } from "@/db/in-transaction";
import { type DraftStep, fileDrafts } from "@/db/schema/drafts";
import type { Matching } from "@/lib/intake/matching/matching";
import type { TableForm } from "@/lib/intake/tables/table-form";
import type { DraftNotes } from "./draft-notes";

export interface OpenDraft {
  readonly draftId: string;
  readonly fileName: string;
  readonly fileBytes: number;
  readonly step: DraftStep;
  readonly form: TableForm | undefined;
  readonly matching: Matching | undefined;
  readonly notes: DraftNotes;
  readonly updatedAt: string;
}

const anId = /^[0-9a-f]{8}-[0-9a-f]{4}-[0-9a-f]{4}-[0-9a-f]{4}-[0-9a-f]{12}$/;

export async function openDraft(draftId: string): Promise<OpenDraft | undefined> {
  if (!anId.test(draftId)) return undefined;
  const [row] = await readOnly((db) => db.select().from(fileDrafts).where(eq(fileDrafts.draftId, draftId)));
  return row === undefined ? undefined : draftOf(row);
}

export async function openDrafts(): Promise<readonly OpenDraft[]> {
  const rows = await readOnly((db) => db.select().from(fileDrafts).orderBy(desc(fileDrafts.updatedAt)).limit(200));
  return rows.map(draftOf).filter(({ notes }) => notes.added === undefined);
}

function draftOf({ form, matching, look, ...row }: typeof fileDrafts.$inferSelect): OpenDraft {
  return { ...row, form: form ?? undefined, matching: matching ?? undefined, notes: look as DraftNotes }; // only drafts of ours are stored there
}

/** A file that has arrived. What came of files that were added is known by their loads; their drafts go after a day. */
export async function startDraft(file: {
  draftId: string;
  fileName: string;
  fileBytes: number;
  fileSha256: string;
}): Promise<void> {
  const now = new Date().toISOString();
  const notes: DraftNotes = { ours: false, wishes: {}, said: {} };
  await inTransaction(async (tx) => {
    await tx.execute(sql`delete from file_drafts where look ? 'added' and updated_at < now() - interval '1 day'`);
    await tx.insert(fileDrafts).values({ ...file, step: "look", look: notes, createdAt: now, updatedAt: now });
  });
}

export interface DraftChange {
  readonly step?: DraftStep;
  readonly form?: TableForm;
  readonly matching?: Matching;
}

/** Changes some of a draft; notes that are not named stay, and those named undefined go. */
export async function keepNotes(draftId: string, notes: Partial<DraftNotes>, change: DraftChange = {}): Promise<void> {
  await inTransaction(async (tx) => {
    const [row] = await tx.select().from(fileDrafts).where(eq(fileDrafts.draftId, draftId)).for("update");
    if (row === undefined) return;
    await tx
      .update(fileDrafts)
      .set({ ...change, look: { ...(row.look as DraftNotes), ...notes }, updatedAt: new Date().toISOString() }) // as above
      .where(eq(fileDrafts.draftId, draftId));
  });
}

export async function dropDraft(draftId: string): Promise<void> {
  await inTransaction((tx) => tx.delete(fileDrafts).where(eq(fileDrafts.draftId, draftId)));
}
