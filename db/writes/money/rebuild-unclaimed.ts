import { sql } from "drizzle-orm";
import type { Transaction } from "../../database-types";
import { inTransaction } from "../../in-transaction";
import { run } from "../staging/run";
import { withStaging } from "../staging/staging-table";
import { judgeAllInto, type Threads } from "./judge-all";
import { beginJudgingAll, beginWritingAll } from "./judging-locks";
import { missingOf, unclaimedColumns, unclaimedKey } from "./unclaimed-columns";

/** Judges every unit anew. @returns how many rows there are now */
export async function rebuildUnclaimed(threads?: Threads): Promise<number> {
  return await withJudgingTable((table) =>
    inTransaction((tx) => rebuildUnclaimedBy(tx, table, threads), { timeoutSeconds: 3600 }),
  );
}

/** An empty table for `rebuildUnclaimedBy`. It is removed afterwards, so the transaction must be over by then. */
export async function withJudgingTable<R>(work: (table: string) => Promise<R>): Promise<R> {
  return await withStaging(async ({ create }) =>
    work(await create(unclaimedColumns.map(({ name, type }) => `${name} ${type}`))),
  );
}

/**
 * Judges every unit anew, beside the rows that stand, and then stores what differs from them. Pages and changes go on
 * meanwhile; a unit that changes after it was read is marked again and judged once more by `settleUnclaimed`.
 * @param tx  which must not have changed anything that is judged: units are read by other connections
 */
export async function rebuildUnclaimedBy(tx: Transaction, table: string, threads?: Threads): Promise<number> {
  await beginJudgingAll(tx);
  await run(tx, `create temporary table seen_marks on commit drop as select unit_id, mark from units_to_judge`);
  await run(tx, `create temporary table seen_mark_of_all on commit drop as select mark from all_to_judge`);
  const rows = await judgeAllInto(table, threads);
  await beginWritingAll(tx);
  await storeWhatDiffers(tx, table);
  await run(
    tx,
    `delete from missing_lists l where not exists (select from unclaimed_work w where w.missing_key = l.missing_key)`,
  );
  await run(tx, `delete from units_to_judge u using seen_marks s where u.unit_id = s.unit_id and u.mark = s.mark`);
  await run(tx, `delete from all_to_judge where mark in (select mark from seen_mark_of_all)`);
  return rows;
}

/**
 * Row by row under the same key, so that a rebuild that finds nothing new writes nothing. New rows are those whose key is
 * free: asked of the index row by row, since of a table that was empty a moment ago the planner expects one row, and a
 * join would read the growing table again for each new one. Where no row stands there is nothing to ask.
 */
async function storeWhatDiffers(tx: Transaction, table: string): Promise<void> {
  const names = unclaimedColumns.map(({ name }) => name).join(", ");
  const add = `insert into unclaimed_work (${names}, missing) select ${names}, ${missingOf("n")} from ${table} n`;
  const [standing] = await tx.rows(sql`select from unclaimed_work limit 1`);
  if (standing === undefined) return await run(tx, add);
  await run(tx, `analyze ${table} (${unclaimedKey.join(", ")})`);
  const same = unclaimedKey.map((name) => `n.${name} = w.${name}`).join(" and ");
  const alike = [
    ...unclaimedColumns.map(({ name }) => `n.${name} is not distinct from w.${name}`),
    `w.missing = ${missingOf("n")}`,
  ].join(" and ");
  await run(tx, `delete from unclaimed_work w where not exists (select from ${table} n where ${same} and ${alike})`);
  await run(tx, `${add} on conflict (${unclaimedKey.join(", ")}) do nothing`);
}
