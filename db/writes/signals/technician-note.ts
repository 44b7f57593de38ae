import { sql } from "drizzle-orm";
import { inTransaction } from "../../in-transaction";

export interface NewNote {
  readonly maker: string;
  readonly modelNumber: string | undefined;
  /** Normalised, both ends included; undefined: every serial. */
  readonly serials: { readonly from: string; readonly to: string } | undefined;
  readonly component: string | undefined;
  readonly words: string;
  readonly signalKey: string | undefined;
  readonly by: string;
}

export type NoteResult =
  | { readonly kind: "written"; readonly noteId: number }
  | { readonly kind: "no-words" }
  | { readonly kind: "serials-reversed" }
  | { readonly kind: "no-such-maker" };

/** Tells technicians something about a range of serials; it stands until it is lifted. */
export async function writeTechnicianNote(note: NewNote): Promise<NoteResult> {
  const { maker, modelNumber, serials, component, words, signalKey, by } = note;
  if (words.trim() === "") return { kind: "no-words" };
  if (serials !== undefined && serials.from > serials.to) return { kind: "serials-reversed" };
  return await inTransaction<NoteResult>(async (tx) => {
    const [row] = await tx.rows<{ noteId: number }>(sql`
      insert into technician_notes (maker_id, model_number, serial_from, serial_to, component, words, signal_key, by, at)
      select maker_id, ${modelNumber ?? null}, ${serials?.from ?? null}, ${serials?.to ?? null}, ${component ?? null}, ${words.trim()},
        ${signalKey ?? null}, ${by}, now()
      from makers where name = ${maker} returning note_id::int as "noteId"`);
    return row === undefined ? { kind: "no-such-maker" } : { kind: "written", noteId: row.noteId };
  });
}

/** @returns whether there was a note to lift */
export async function liftTechnicianNote(noteId: number, by: string): Promise<boolean> {
  return await inTransaction(async (tx) => {
    const rows = await tx.rows(sql`
      update technician_notes set lifted_at = now(), lifted_by = ${by}
      where note_id = ${noteId} and lifted_at is null returning note_id`);
    return rows.length > 0;
  });
}
