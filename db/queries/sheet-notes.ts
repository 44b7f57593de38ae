import { sql } from "drizzle-orm";
import type { Reader } from "../database-types";

/** What the shop wants technicians to know about this machine: notes of its maker that name its model and serial, or none. */
export async function loadTechnicianNotes(
  db: Reader,
  { unitId }: { readonly unitId: string },
): Promise<readonly string[]> {
  const rows = await db.rows<{ words: string }>(sql`
    select n.words from technician_notes n join units u on u.maker_id = n.maker_id join models m using (model_id)
    where u.unit_id = ${unitId} and n.lifted_at is null and (n.model_number is null or n.model_number = m.number)
      and (n.serial_from is null or u.serial_normalised between n.serial_from and n.serial_to)
    order by n.at desc, n.note_id desc limit 5`);
  return rows.map(({ words }) => words);
}
