// Covered work without its pay. Rows are deleted and judged anew unit by unit, never adjusted, so they cannot drift.
import { sql } from "drizzle-orm";
import type { ExpectedRange } from "@/lib/domain/reading";
import type { Transaction } from "../../database-types";
import { loadAllExpectedRanges, loadExpectedRanges } from "../../queries/expected-ranges";
import type { UnitScope } from "../../queries/money-units";
import { inScope } from "../../queries/money-units";
import { loadAllPolicies } from "../../queries/policies";
import { judgeUnclaimed, type Yardstick } from "./judge-unclaimed";

/** Any number will do as long as it never changes. It is held in common for some units, alone for all of them. */
const unclaimedLock = 7_016_051;

/** Judges these units anew, inside the transaction that changed them or anything that bears on them. */
export async function refreshUnclaimed(tx: Transaction, unitIds: readonly string[]): Promise<void> {
  if (unitIds.length === 0) return;
  await tx.rows(sql`select pg_advisory_xact_lock_shared(${unclaimedLock})::text`);
  const ids = [...new Set(unitIds)];
  await tx.rows(sql`
    select pg_advisory_xact_lock(id)::text from (select unnest(${sql.param(ids)}::bigint[]) as id order by 1) as each`);
  const models = await tx.rows<{ model_id: number }>(sql`
    select distinct model_id from units where unit_id = any(${sql.param(ids)}::bigint[])`);
  const few = models.length <= 20 ? models.map((row) => row.model_id) : undefined;
  await judgeAnew(tx, { kind: "units", unitIds: ids }, await loadYardstick(tx, few));
  await tx.rows(sql`delete from units_to_judge where unit_id = any(${sql.param(ids)}::bigint[])`);
}

/** How many units are judged at once: memory holds no more of them. */
const unitsAtOnce = 2_000;

/** Judges every unit anew. @returns how many rows there are now */
export async function rebuildUnclaimed(tx: Transaction): Promise<number> {
  await tx.rows(sql`select pg_advisory_xact_lock(${unclaimedLock})::text`);
  await tx.rows(sql`delete from unclaimed_work`);
  await tx.rows(sql`delete from units_to_judge`); // first: what is marked from here on may have changed after it was read
  if (!(await anyPolicy(tx))) return 0;
  const yardstick = await loadYardstick(tx);
  const ends = await tx.rows<{ unit_id: string }>(sql`
    select unit_id::text from (select unit_id, row_number() over (order by unit_id) as place from units) u
    where place % ${unitsAtOnce} = 0 order by u.unit_id`);
  let after: string | undefined;
  let rows = 0;
  for (const until of [...ends.map(({ unit_id }) => unit_id), undefined]) {
    rows += await judgeAndInsert(tx, { kind: "run", after, until }, yardstick);
    after = until;
  }
  return rows;
}

/** Without a policy nothing is covered, and no claim was made: each names the one it rests on. */
export async function anyPolicy(tx: Transaction): Promise<boolean> {
  const [found] = await tx.rows<{ any: boolean }>(sql`select exists (select from policies) as any`);
  return found?.any === true;
}

/** @param models whose expected ranges are read; those of all where absent */
async function loadYardstick(tx: Transaction, models?: readonly number[]): Promise<Yardstick> {
  const policies = await loadAllPolicies(tx);
  if (models === undefined) return { policies, ranges: await loadAllExpectedRanges(tx) };
  const ranges = new Map<number, readonly ExpectedRange[]>();
  for (const model of models) ranges.set(model, await loadExpectedRanges(tx, model));
  return { policies, ranges };
}

async function judgeAnew(tx: Transaction, scope: UnitScope, yardstick: Yardstick): Promise<void> {
  await tx.rows(sql`delete from unclaimed_work where ${inScope(sql`unit_id`, scope)}`);
  await judgeAndInsert(tx, scope, yardstick);
}

async function judgeAndInsert(tx: Transaction, scope: UnitScope, yardstick: Yardstick): Promise<number> {
  const rows = await judgeUnclaimed(tx, scope, yardstick);
  if (rows.length > 0)
    await tx.rows(sql`
      insert into unclaimed_work select * from jsonb_populate_recordset(null::unclaimed_work, ${JSON.stringify(rows)}::jsonb)`);
  return rows.length;
}
