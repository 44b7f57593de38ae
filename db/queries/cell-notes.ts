import { sql } from "drizzle-orm";
import type { CellNote } from "@/lib/intake/matching/translation";
import type { Reader } from "../database-types";

export interface KeptNote extends CellNote {
  readonly batchId: number;
  readonly fileName: string;
  readonly row: number;
}

type NoteRow = {
  batchId: number;
  fileName: string;
  row: number;
  source: string;
  column: string;
  raw: string;
  taken: string;
  note: string;
};

const columns = sql`n.batch_id::integer as "batchId", b.file_name as "fileName", n.row, n.source, n."column", n.raw, n.taken, n.note`;

/** Cells of a job's rows that were not taken as they stood, in loads that were not taken back. */
export async function loadNotesOfJob(db: Reader, jobNumber: string): Promise<readonly KeptNote[]> {
  return await db.rows<NoteRow>(sql`
    select ${columns} from cell_notes n join batches b using (batch_id)
    where b.state = 'added' and n.job_id = (select j.job_id from jobs j where j.job_number = ${jobNumber} limit 1) order by n.batch_id desc, n.row, n.place`);
}

/** The first cells of a load that were not taken as they stood. */
export async function loadNotesOfBatch(db: Reader, batchId: number, limit: number): Promise<readonly KeptNote[]> {
  return await db.rows<NoteRow>(sql`
    select ${columns} from cell_notes n join batches b using (batch_id) where n.batch_id = ${batchId} order by n.row, n.place limit ${limit}`);
}
