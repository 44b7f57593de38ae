import { inTransaction } from "../in-transaction";
import { rebuildUnclaimedBy, withJudgingTable } from "./money/rebuild-unclaimed";
import { countTables, refreshCounts } from "./refresh-counts";
import { rowsOf, run } from "./staging/run";
import { intakeLock } from "./store-import";

export interface RecountedTable {
  readonly table: string;
  readonly cells: number;
  /** Rows that were there and should not, or should have been there and were not. */
  readonly differing: number;
}

const concluded = [...countTables, "unclaimed_work"] as const;

/** Rebuilds every count and every conclusion from the rows, and compares it with what was there. No load runs meanwhile. */
export async function recount(): Promise<readonly RecountedTable[]> {
  return await withJudgingTable(recountWith);
}

async function recountWith(judgingTable: string): Promise<readonly RecountedTable[]> {
  return await inTransaction(
    async (tx) => {
      await run(tx, `select pg_advisory_xact_lock(${intakeLock})`);
      for (const table of concluded)
        await run(tx, `create temporary table old_${table} on commit drop as select * from ${table}`);
      await refreshCounts(tx, "all");
      await rebuildUnclaimedBy(tx, judgingTable);
      const compared: RecountedTable[] = [];
      for (const table of concluded) {
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
