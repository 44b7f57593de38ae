import { and, eq } from "drizzle-orm";
import type { Reader } from "../database-types";
import { heldRows } from "../schema/intake";
import type { HeldRow } from "./batches";

/** One row that a load did not take in; undefined where it took it in or never had it. */
export async function loadHeldRow(db: Reader, batchId: number, row: number): Promise<HeldRow | undefined> {
  const [held] = await db
    .select()
    .from(heldRows)
    .where(and(eq(heldRows.batchId, batchId), eq(heldRows.row, row)));
  return held;
}
