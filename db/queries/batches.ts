import { asc, desc, eq } from "drizzle-orm";
import type { Reader } from "../database-types";
import { batches, heldRows } from "../schema/intake";

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

/** One load with the first of its held rows; undefined where there is none of that number. */
export async function loadBatch(
  db: Reader,
  batchId: number,
): Promise<{ batch: BatchRow; held: HeldRow[] } | undefined> {
  const [batch] = await db.select().from(batches).where(eq(batches.batchId, batchId));
  if (batch === undefined) return undefined;
  const held = await db
    .select()
    .from(heldRows)
    .where(eq(heldRows.batchId, batchId))
    .orderBy(asc(heldRows.row))
    .limit(500);
  return { batch, held };
}
