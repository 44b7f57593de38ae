// Covered work without its pay. Rows are judged anew unit by unit, never adjusted, so they cannot drift.
import { sql } from "drizzle-orm";
import type { Transaction } from "../../database-types";
import { loadMoneyCases } from "../../queries/money-cases";
import { inScope, type UnitScope } from "../../queries/money-units";
import { judgeUnclaimed, type UnclaimedRow } from "./judge-unclaimed";
import { isAllBeingJudged, joinWriters } from "./judging-locks";
import { loadYardstick } from "./load-yardstick";
import { MissingLists, storeMissingLists } from "./missing-lists";
import { missingOf, unclaimedColumns } from "./unclaimed-columns";

/**
 * Judges these units anew, inside the transaction that changed them or anything that bears on them. Whoever judges all
 * units meanwhile may have read them before the change, so they are marked for another look then.
 */
export async function refreshUnclaimed(tx: Transaction, unitIds: readonly string[]): Promise<void> {
  if (unitIds.length === 0) return;
  const ids = [...new Set(unitIds)];
  const scope: UnitScope = { kind: "units", unitIds: ids };
  await joinWriters(tx, ids);
  // Taken off first: who marks one of them from now on waits for this transaction, and is not forgotten by it.
  await tx.rows(sql`delete from units_to_judge where ${inScope(sql`unit_id`, scope)}`);
  const yardstick = await loadYardstick(tx, ids);
  const rows = judgeUnclaimed(await loadMoneyCases(tx, scope, yardstick.policies), yardstick);
  await tx.rows(sql`delete from unclaimed_work where ${inScope(sql`unit_id`, scope)}`);
  if (rows.length > 0) await addRows(tx, rows);
  if (await isAllBeingJudged(tx)) await markUnits(tx, ids);
}

async function addRows(tx: Transaction, rows: readonly UnclaimedRow[]): Promise<void> {
  const lists = new MissingLists();
  const keyed = rows.map(({ missing, ...row }) => ({ ...row, missing_key: lists.keyOf(missing) }));
  await storeMissingLists(tx, lists.takeAdded());
  const names = unclaimedColumns.map(({ name }) => name).join(", ");
  await tx.rows(sql`
    insert into unclaimed_work (${sql.raw(names)}, missing) select ${sql.raw(names)}, ${sql.raw(missingOf("r"))}
    from jsonb_populate_recordset(null::unclaimed_work, ${JSON.stringify(keyed)}::jsonb) r`);
}

/** For whoever judges next. A unit that is marked again gets another mark, which tells that it changed once more. */
export async function markUnits(tx: Transaction, unitIds: readonly string[]): Promise<void> {
  await tx.rows(sql`
    insert into units_to_judge (unit_id) select distinct id from unnest(${sql.param([...unitIds])}::bigint[]) id order by 1
    on conflict (unit_id) do update set mark = default`);
}
