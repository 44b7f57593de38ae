import { sql } from "drizzle-orm";
import type { Reader } from "../database-types";

export interface TechnicianNote {
  readonly noteId: number;
  readonly words: string;
  readonly component: string | undefined;
  readonly by: string;
  readonly at: string;
  readonly modelNumber: string | undefined;
  readonly serialFrom: string | undefined;
  readonly serialTo: string | undefined;
}

type Row = { [K in keyof TechnicianNote]: Exclude<TechnicianNote[K], undefined> | null };

const columns = sql`n.note_id::int as "noteId", n.words, n.component, n.by, n.at::text, n.model_number as "modelNumber",
  n.serial_from as "serialFrom", n.serial_to as "serialTo"`;

/** Notes that hold for a unit by its maker, model and serial, newest first. */
export async function loadNotesOfUnit(db: Reader, unitId: string): Promise<TechnicianNote[]> {
  const rows = await db.rows<Row>(sql`
    select ${columns} from units u join models m using (model_id)
    join technician_notes n on n.maker_id = u.maker_id and (n.model_number is null or n.model_number = m.number)
      and (n.serial_from is null or (u.serial_normalised collate "C" >= n.serial_from and u.serial_normalised collate "C" <= n.serial_to))
    where u.unit_id = ${unitId}::bigint and n.lifted_at is null order by n.note_id desc`);
  return rows.map(noteOf);
}

/** Notes that were written from a signal and still stand. */
export async function loadNotesOfSignal(db: Reader, signalKey: string): Promise<TechnicianNote[]> {
  const rows = await db.rows<Row>(sql`
    select ${columns} from technician_notes n where n.signal_key = ${signalKey} and n.lifted_at is null order by n.note_id desc`);
  return rows.map(noteOf);
}

function noteOf(row: Row): TechnicianNote {
  return {
    noteId: row.noteId ?? 0,
    words: row.words ?? "",
    component: row.component ?? undefined,
    by: row.by ?? "",
    at: row.at ?? "",
    modelNumber: row.modelNumber ?? undefined,
    serialFrom: row.serialFrom ?? undefined,
    serialTo: row.serialTo ?? undefined,
  };
}
