import { sql } from "drizzle-orm";
import { inTransaction } from "../in-transaction";

/**
 * A person has seen what files say otherwise of an edited field, and the edit stands: it is written anew, so that only
 * a file that says something else again is told of. False where there is no such edit that holds.
 */
export async function upholdJobEdit({
  editId,
  by,
}: {
  readonly editId: number;
  readonly by: string;
}): Promise<boolean> {
  if (by.trim() === "") throw new RangeError("by: is blank");
  return await inTransaction(async (tx) => {
    const lifted = await tx.rows(sql`
      update hand_edits set lifted_at = now() where edit_id = ${editId} and table_name = 'jobs' and lifted_at is null and column_name <> 'unit_id' returning edit_id`);
    if (lifted.length === 0) return false;
    await tx.execute(sql`
      insert into hand_edits (table_name, key, column_name, value_before, value, at, by, reason)
      select table_name, key, column_name, value_before, value, now(), ${by.trim()}, 'Stands against what a file says otherwise.' from hand_edits where edit_id = ${editId}`);
    return true;
  });
}
