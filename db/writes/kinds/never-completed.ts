import type { Transaction } from "@/db/database-types";
import { jobStatuses } from "@/lib/domain/job";
import { neverCompletedReason } from "@/lib/intake/never-completed";
import { flagRows } from "../staging/flag-rows";
import { rowsOf, run } from "../staging/run";
import type { Staged } from "../staging/staged-kind";

/**
 * Jobs that came to nothing and have no day of completion: one that is on file keeps the day that is there, and counts
 * no longer. Any other is left out with its reason, or, in a file of our own columns, held.
 */
export async function settleNeverCompleted(tx: Transaction, staged: Staged): Promise<void> {
  const { table, rows, beside } = staged;
  const open = "s.readable and s.completed_on is null";
  const [found] = await rowsOf<{ any: boolean }>(tx, `select exists (select from ${table} s where ${open}) as any`);
  if (found?.any !== true) return;
  await run(
    tx,
    `update ${table} s set completed_on = t.completed_on from jobs t where ${open} and t.unit_id = coalesce(s.joins_from, s.unit_id) and t.job_id = s.job_id`,
  );
  if (rows === undefined) {
    await flagRows(
      tx,
      staged,
      `select s.row, 'completed_on', '', 'is blank, and the row says that the job came to nothing', 'Leave the row out; or write the day on which it was closed.' from ${table} s where ${open}`,
    );
    return;
  }
  const reasons = jobStatuses.map((status) => `when '${status}' then '${neverCompletedReason(status)}'`).join(" ");
  await run(
    tx,
    `update ${rows.table} r set reason = case s.status ${reasons} end from ${table} s where ${open} and s.row = r.row`,
  );
  for (const part of new Set([...(beside?.values() ?? []), table]))
    await run(
      tx,
      `update ${part} p set readable = false from ${rows.table} r where r.row = p.row and r.reason is not null and p.readable`,
    );
}
