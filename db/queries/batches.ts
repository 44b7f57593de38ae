import { asc, count, desc, eq } from "drizzle-orm";
import type { Reader } from "../database-types";
import { batches, type HeldState, heldRows } from "../schema/intake";

export type BatchRow = typeof batches.$inferSelect;
export type HeldRow = typeof heldRows.$inferSelect;

/** All loads, the latest first. */
export async function loadBatches(db: Reader): Promise<BatchRow[]> {
  return await db.select().from(batches).orderBy(desc(batches.batchId)).limit(500);
}

/** One load; undefined where there is none of that number. */
export async function loadBatchRow(db: Reader, batchId: number): Promise<BatchRow | undefined> {
  const [batch] = await db.select().from(batches).where(eq(batches.batchId, batchId));
  return batch;
}

/** One load with the first of the rows that it did not take in; undefined where there is none of that number. */
export async function loadBatch(
  db: Reader,
  batchId: number,
): Promise<{ batch: BatchRow; held: HeldRow[]; waiting: Readonly<Record<HeldState, number>> } | undefined> {
  const batch = await loadBatchRow(db, batchId);
  if (batch === undefined) return undefined;
  const held = await db
    .select()
    .from(heldRows)
    .where(eq(heldRows.batchId, batchId))
    .orderBy(asc(heldRows.row))
    .limit(500);
  return { batch, held, waiting: await countHeld(db, batchId) };
}

/** How many rows of a load wait, were mended, were left out, or are no record. */
async function countHeld(db: Reader, batchId: number): Promise<Readonly<Record<HeldState, number>>> {
  const rows = await db
    .select({ state: heldRows.state, rows: count() })
    .from(heldRows)
    .where(eq(heldRows.batchId, batchId))
    .groupBy(heldRows.state);
  const none = { held: 0, refused: 0, mended: 0, left_out: 0 };
  return { ...none, ...Object.fromEntries(rows.map(({ state, rows: number }) => [state, number])) };
}
