import type { Transaction } from "../../database-types";
import { flagRows } from "../staging/flag-rows";
import type { Staged } from "../staging/staged-kind";

/** Rows about a unit that is not on file: what is said of it would hang in the air. */
export async function flagUnknownUnits(tx: Transaction, staged: Staged): Promise<void> {
  await flagRows(
    tx,
    staged,
    `select s.row, 'serial', s.serial, 'is not the serial of a unit of ' || s.maker || ' on file', 'Correct it, or load the unit first.'
     from ${staged.table} s where s.readable and not exists (select from units u where u.unit_id = s.unit_id)`,
  );
}
