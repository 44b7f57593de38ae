import { sql } from "drizzle-orm";
import type { Transaction } from "@/db/database-types";

/** Held rows that a load brings in, mended. */
export interface FollowUp {
  /** The load that they were held with. */
  readonly parent: number;
  readonly rows: readonly MendedRow[];
}

export interface MendedRow {
  readonly row: number;
  readonly corrections: Readonly<Record<string, string>>;
}

/**
 * What becomes of the held rows: mended by the new load where that took them in, or waiting on with their corrections
 * and what is still wrong. `table` holds the staged rows with their fates; without a load none was taken in.
 */
export async function markMended(
  tx: Transaction,
  { parent, rows }: FollowUp,
  { table, batchId }: { readonly table: string; readonly batchId: number | undefined },
): Promise<void> {
  const taken = sql.raw(batchId === undefined ? "false" : "r.fate in ('new', 'changed', 'same')");
  await tx.execute(sql`
    update held_rows h set corrections = c.corrections,
      state = case when ${taken} then 'mended' else 'held' end,
      mended_by = case when ${taken} then ${batchId ?? null}::bigint end,
      problems = case when r.fate = 'held' then r.problems else h.problems end
    from ${sql.raw(table)} r join jsonb_to_recordset(${JSON.stringify(rows)}::jsonb) as c(row integer, corrections jsonb) using (row)
    where h.batch_id = ${parent} and h.row = r.row and h.state = 'held'`);
}
