// Units whose covered work must be judged anew because of a change that is too large to judge within its transaction.
import { sql } from "drizzle-orm";
import type { Transaction } from "../../database-types";
import { inTransaction } from "../../in-transaction";
import { anyPolicy } from "../../queries/policies";
import { run } from "../staging/run";
import type { StagedPart } from "../staging/staged-file";
import { waitForJudgingAll } from "./judging-locks";
import { rebuildUnclaimed } from "./rebuild-unclaimed";
import { refreshUnclaimed } from "./refresh-unclaimed";

/** Marks the units of all staged rows that are new or changed; every unit where what all are held against has changed. */
export async function markStagedUnits(tx: Transaction, parts: readonly StagedPart[]): Promise<void> {
  if (!(await anyPolicy(tx))) {
    // Whoever publishes the first policy waits for the end of this change, and then marks all units.
    await run(tx, "lock table policies in share mode");
    if (!(await anyPolicy(tx))) return;
  }
  for (const { staged, kind } of parts) {
    if (kind.kind === "policies" || kind.kind === "ranges" || staged.agreed === true) await markAllUnits(tx);
    if (staged.agreed === true) continue;
    if (!kind.derived.some((column) => column.startsWith("unit_id"))) continue;
    const columns = ["unit_id", ...(kind.derived.includes("joins_from bigint") ? ["joins_from"] : [])];
    for (const column of columns)
      await run(
        tx,
        `insert into units_to_judge (unit_id) select distinct ${column} from ${staged.table} where fate in ('new', 'changed') and ${column} is not null order by 1
         on conflict (unit_id) do update set mark = default`,
      );
  }
  await judgeWhereFew(tx);
}

/** Marks the units of these models. */
export async function markUnitsOfModels(tx: Transaction, models: readonly number[] | "all"): Promise<void> {
  if (models === "all") await markAllUnits(tx);
  else
    await tx.rows(sql`
      insert into units_to_judge (unit_id) select unit_id from units where model_id = any(${sql.param([...models])}::integer[]) order by 1
      on conflict (unit_id) do update set mark = default`);
  await judgeWhereFew(tx);
}

/** A policy changed: any job may now be covered by it, or no longer. */
export async function markAllUnits(tx: Transaction): Promise<void> {
  await tx.rows(sql`insert into all_to_judge ("only") values (true) on conflict ("only") do update set mark = default`);
}

/** As many as are judged within the transaction that changed them. */
const few = 500;

async function judgeWhereFew(tx: Transaction): Promise<void> {
  const ids = await marked(tx, few + 1);
  if (ids.length <= few) await refreshUnclaimed(tx, ids);
}

/**
 * Judges what is marked, in transactions of their own: all units at once where most of them are, or all that they are held
 * against. What others mark meanwhile is judged too.
 */
export async function settleUnclaimed(): Promise<void> {
  for (;;) {
    const { units, marked: waiting, all } = await countMarks();
    if (all || waiting * 5 > units) {
      if (!all && waiting === 0) return;
      await rebuildUnclaimed();
      continue;
    }
    if (waiting === 0) return;
    await inTransaction(judgeSomeMarked, { timeoutSeconds: 3600 });
  }
}

async function judgeSomeMarked(tx: Transaction): Promise<void> {
  await waitForJudgingAll(tx);
  await refreshUnclaimed(tx, await marked(tx, few));
}

async function countMarks() {
  const [found] = await inTransaction((tx) =>
    tx.rows<{ marked: number; units: number; all: boolean }>(sql`
      select (select count(*)::int from units_to_judge) as marked, (select count(*)::int from units) as units,
        exists (select from all_to_judge) as "all"`),
  );
  return found ?? { marked: 0, units: 0, all: false };
}

async function marked(tx: Transaction, most: number): Promise<string[]> {
  const rows = await tx.rows<{ unit_id: string }>(
    sql`select unit_id::text from units_to_judge order by unit_id limit ${most}`,
  );
  return rows.map(({ unit_id }) => unit_id);
}
