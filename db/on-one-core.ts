import { sql } from "drizzle-orm";
import type { Reader } from "./database-types";

/**
 * For the rest of the transaction the database gives a statement no helpers: work that nobody waits for leaves the other
 * cores to whoever reads a page, and takes a fifth less of them in all.
 */
export async function onOneCore(db: Reader): Promise<void> {
  await db.rows(sql`select set_config('max_parallel_workers_per_gather', '0', true)`);
}
