import { and, count, eq } from "drizzle-orm";
import type { Reader } from "../database-types";
import { batches, heldRows } from "../schema/intake";
import type { HeldRow } from "./batches";

/** One row that a load did not take in; undefined where it took it in or never had it. */
export async function loadHeldRow(db: Reader, batchId: number, row: number): Promise<HeldRow | undefined> {
  const [held] = await db
    .select()
    .from(heldRows)
    .where(and(eq(heldRows.batchId, batchId), eq(heldRows.row, row)));
  return held;
}

/** Rows that wait to be corrected, over all loads that are in. */
export async function countHeldRows(db: Reader): Promise<number> {
  const [waiting] = await db
    .select({ rows: count() })
    .from(heldRows)
    .innerJoin(batches, eq(batches.batchId, heldRows.batchId))
    .where(and(eq(heldRows.state, "held"), eq(batches.state, "added")));
  return waiting?.rows ?? 0;
}
