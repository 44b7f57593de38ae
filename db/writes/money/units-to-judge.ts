// Units whose covered work must be judged anew because of a change that is too large to judge within its transaction.
import { sql } from "drizzle-orm";
import type { Transaction } from "../../database-types";
import { inTransaction } from "../../in-transaction";
import { run } from "../staging/run";
import type { StagedPart } from "../staging/staged-file";
import { anyPolicy, rebuildUnclaimed, refreshUnclaimed } from "./refresh-unclaimed";

/** Marks the units of all staged rows that are new or changed; every unit where what all are held against has changed. */
export async function markStagedUnits(tx: Transaction, parts: readonly StagedPart[]): Promise<void> {
  if (!(await anyPolicy(tx))) {
    // Whoever publishes the first policy waits for the end of this change, and then marks all units.
    await run(tx, "lock table policies in share mode");
    if (!(await anyPolicy(tx))) return;
  }
  for (const { staged, kind } of parts) {
    if (kind.kind === "policies" || kind.kind === "ranges") await markAllUnits(tx);
    if (!kind.derived.some((column) => column.startsWith("unit_id"))) continue;
    const columns = ["unit_id", ...(kind.derived.includes("joins_from bigint") ? ["joins_from"] : [])];
    for (const column of columns)
      await run(
        tx,
        `insert into units_to_judge select distinct ${column} from ${staged.table} where fate in ('new', 'changed') and ${column} is not null order by 1 on conflict do nothing`,
      );
  }
  await judgeWhereFew(tx);
}

/** Marks the units of these models. */
export async function markUnitsOfModels(tx: Transaction, models: readonly number[] | "all"): Promise<void> {
  if (models === "all") await markAllUnits(tx);
  else
    await tx.rows(sql`
      insert into units_to_judge select unit_id from units where model_id = any(${sql.param([...models])}::integer[]) on conflict do nothing`);
  await judgeWhereFew(tx);
}

/** A policy changed: any job may now be covered by it, or no longer. */
export async function markAllUnits(tx: Transaction): Promise<void> {
  await tx.rows(sql`insert into units_to_judge select distinct unit_id from jobs on conflict do nothing`);
}

/** As many as are judged within the transaction that changed them. */
const few = 500;

async function judgeWhereFew(tx: Transaction): Promise<void> {
  const ids = await marked(tx, few + 1);
  if (ids.length <= few) await refreshUnclaimed(tx, ids);
}

/** Judges what is marked, in transactions of their own; all units at once where most of them are. */
export async function settleUnclaimed(): Promise<void> {
  const [found] = await inTransaction((tx) =>
    tx.rows<{ marked: number; units: number }>(
      sql`select (select count(*)::int from units_to_judge) as marked, (select count(*)::int from units) as units`,
    ),
  );
  if (found === undefined || found.marked === 0) return;
  if (found.marked * 5 > found.units) {
    await inTransaction((tx) => rebuildUnclaimed(tx), { timeoutSeconds: 3600 });
    return;
  }
  for (let left = found.marked; left > 0; left -= few)
    await inTransaction(async (tx) => refreshUnclaimed(tx, await marked(tx, few)));
}

async function marked(tx: Transaction, most: number): Promise<string[]> {
  const rows = await tx.rows<{ unit_id: string }>(
    sql`select unit_id::text from units_to_judge order by unit_id limit ${most}`,
  );
  return rows.map(({ unit_id }) => unit_id);
}
