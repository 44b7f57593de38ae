import { inTransaction } from "../in-transaction";
import { countTables, refreshCounts } from "./refresh-counts";
import { rowsOf, run } from "./staging/run";
import { intakeLock } from "./store-import";

export interface RecountedTable {
  readonly table: string;
  readonly cells: number;
  /** Rows that were there and should not, or should have been there and were not. */
  readonly differing: number;
}

/** Rebuilds every count from the rows, and compares it with what was there. No load runs meanwhile. */
export async function recount(): Promise<readonly RecountedTable[]> {
  return await inTransaction(
    async (tx) => {
      await run(tx, `select pg_advisory_xact_lock(${intakeLock})`);
      for (const table of countTables)
        await run(tx, `create temporary table old_${table} on commit drop as select * from ${table}`);
      await refreshCounts(tx, "all");
      const compared: RecountedTable[] = [];
      for (const table of countTables) {
        const [found] = await rowsOf<{ cells: number; differing: number }>(
          tx,
          `select (select count(*)::integer from ${table}) as cells,
             (select count(*)::integer from (
               (select * from ${table} except all select * from old_${table}) union all (select * from old_${table} except all select * from ${table})) d) as differing`,
        );
        compared.push({ table, cells: found?.cells ?? 0, differing: found?.differing ?? 0 });
      }
      return compared;
    },
    { timeoutSeconds: 3600 },
  );
}
