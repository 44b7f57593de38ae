// The counts from which every rate is computed. They are deleted and counted anew from the rows, never adjusted by
// differences, so they cannot drift.
import type { Transaction } from "../database-types";
import { placedUnits } from "../placed-units";
import { type Filling, insertInTurn } from "./bulk/filling";
import { inServiceBasis, inServiceOn } from "./kinds/in-service";
import { rowsOf, run } from "./staging/run";

/** Any number will do as long as it never changes: with a model's number it names the lock on that model's counts. */
const countLocks = 7_016_022;

/** Everything that is counted or concluded from the rows. */
export const countTables = [
  "unit_windows",
  "unplaced_units",
  "job_cells",
  "repeated_jobs",
  "suggested_callbacks",
] as const;

/**
 * Counts the units and jobs of these models anew, inside the transaction that changed them.
 * @param insert  stores what is counted; in that transaction where left out
 */
export async function refreshCounts(
  tx: Transaction,
  models: readonly number[] | "all",
  insert: Filling["insert"] = (each) => insertInTurn(tx, each),
): Promise<void> {
  const ids = models === "all" ? await allModels(tx) : [...new Set(models)];
  if (ids.length === 0) return;
  const these = models === "all" ? "is not null" : `= any ('{${ids.toSorted((a, b) => a - b).join(",")}}'::integer[])`;
  await lockCounts(tx, ids);
  await placeInService(tx, `u.model_id ${these}`);
  for (const table of countTables) {
    await run(tx, `delete from ${table} where model_id ${these}`);
  }
  const units = placedUnits(`u.model_id ${these}`);
  const registered = await anyInRegister(tx, these);
  await insert([
    { table: "job_cells", statement: countJobCells(units) },
    { table: "suggested_callbacks", statement: suggestCallbacks(`u.model_id ${these}`) },
    { table: "unplaced_units", statement: countUnplacedUnits(units) },
    ...(registered
      ? [
          { table: "unit_windows", statement: countUnitWindows(units) },
          { table: "repeated_jobs", statement: countRepeatedJobs(units) },
        ]
      : []),
  ]);
}

/** Whoever counts a model waits for all who do. */
export async function lockCounts(tx: Transaction, models: readonly number[]): Promise<void> {
  const ids = models.toSorted((a, b) => a - b).join(",");
  await run(
    tx,
    `select pg_advisory_xact_lock(${countLocks}, id) from (select unnest('{${ids}}'::integer[]) as id order by id) as each`,
  );
}

type PlacedUnit = {
  readonly modelId: number;
  /** Null on a unit without exposure. */
  readonly inServiceOn: string | null;
};

/**
 * Counts anew what a change of one unit's jobs can have changed, inside the transaction that changed them: the units of
 * its model that went into service on its day, since no row counts units of two days. A unit without exposure stands
 * in rows that all of its model share.
 * Checked: tests/db/counts-of-one-unit.test.ts, against counting everything.
 */
export async function refreshCountsOfUnit(tx: Transaction, unitId: string): Promise<void> {
  const of = `u.unit_id = ${BigInt(unitId)}`;
  const [unit] = await rowsOf<{ modelId: number }>(tx, `select model_id as "modelId" from units u where ${of}`);
  if (unit === undefined) return;
  await lockCounts(tx, [unit.modelId]);
  const [placed] = await rowsOf<PlacedUnit>(
    tx,
    `select model_id as "modelId", case when reason is null then in_service_on::text end as "inServiceOn" from ${placedUnits(of)} p`,
  );
  if (placed === undefined || placed.inServiceOn === null) return await refreshCounts(tx, [unit.modelId]);
  const ofDay = (table: string) =>
    `${table}.model_id = ${placed.modelId} and ${table}.in_service_on = '${placed.inServiceOn}'`;
  for (const table of ["job_cells", "repeated_jobs"]) await run(tx, `delete from ${table} where ${ofDay(table)}`);
  await run(tx, `delete from suggested_callbacks where unit_id = ${BigInt(unitId)}`);
  const units = `(select p.* from ${placedUnits(ofDay("u"))} p where p.reason is null)`;
  await run(tx, countJobCells(units));
  await run(tx, countRepeatedJobs(units));
  await run(tx, suggestCallbacks(of));
}

async function allModels(tx: Transaction): Promise<readonly number[]> {
  return (await rowsOf<{ id: number }>(tx, "select model_id as id from models")).map(({ id }) => id);
}

/** No other units are exposure. */
async function anyInRegister(tx: Transaction, these: string): Promise<boolean> {
  const [found] = await rowsOf<{ any: boolean }>(
    tx,
    `select exists (select from units where in_register and model_id ${these}) as any`,
  );
  return found?.any === true;
}

/**
 * The grace after manufacture is the shop's and can change, so days that rest on it are set here. Where none is set no row is locked.
 * @param which  a condition on `u`
 */
export async function placeInService(tx: Transaction, which: string): Promise<void> {
  const of = (column: string) => `u.${column}`;
  const wrong = `${which} and u.in_service_on is distinct from ${inServiceOn(of)}`;
  const [found] = await rowsOf<{ any: boolean }>(tx, `select exists (select from units u where ${wrong}) as any`);
  if (found?.any !== true) return;
  await run(
    tx,
    `update units u set in_service_on = ${inServiceOn(of)}, in_service_basis = ${inServiceBasis(of)} where ${wrong}`,
  );
}

export function countUnitWindows(units: string): string {
  return `insert into unit_windows (model_id, made_half, in_service_on, observed_from, retired_on, units, which_units)
    select model_id, made_half, in_service_on, observed_from, retired_on, count(*), sum(hashint8extended(unit_id, 0) >> 40) from ${units} p
    where reason is null group by 1, 2, 3, 4, 5 order by 1, 3, 4, 5, 2`;
}

export function countUnplacedUnits(units: string): string {
  return `insert into unplaced_units (model_id, reason, units)
    select model_id, reason, count(*) from (select model_id, reason from ${units} p offset 0) p where reason is not null group by 1, 2`; // told once for each unit, not in each step
}

/**
 * The previous failure is that of the same component of the same unit; two on one day are told apart by their key.
 * @param which  a condition on the jobs that are counted; the others are looked at for what came before
 */
export function countJobCells(units: string, which = "true"): string {
  return `insert into job_cells (model_id, component, symptom, cause, counted_as, in_service_on, observed_from, retired_on, failed_on, previous_failed_on, jobs)
    select model_id, component, symptom, cause, counted_as, in_service_on, observed_from, retired_on, failed_on, previous_failed_on, count(*)
    from (
      select p.model_id, j.component, j.symptom, j.cause, j.counted_as, j.failed_on,
        case when p.reason is null then p.in_service_on end as in_service_on,
        p.observed_from,
        case when p.reason is null then p.retired_on end as retired_on,
        case when j.counted_as = 'failure' then
          lag(j.failed_on) over (partition by j.unit_id, j.component, j.counted_as order by j.failed_on, j.job_id) end as previous_failed_on
      from ${units} p join jobs j using (unit_id) where j.counted_as <> 'nothing') c
    where ${which} group by 1, 2, 3, 4, 5, 6, 7, 8, 9, 10 order by 1`;
}

export function countRepeatedJobs(units: string): string {
  return `insert into repeated_jobs (unit_id, job_id, model_id, component, symptom, cause, counted_as, in_service_on, observed_from, retired_on, failed_on)
    select unit_id, job_id, model_id, component, symptom, cause, counted_as, in_service_on, observed_from, retired_on, failed_on
    from (select p.*, j.job_id, j.component, j.symptom, j.cause, j.counted_as, j.failed_on, count(*) over (partition by j.unit_id) as jobs
          from ${units} p join jobs j using (unit_id) where j.counted_as <> 'nothing' and p.reason is null) c
    where jobs > 1 order by unit_id, job_id`;
}

/**
 * The latest earlier closed job on the same component of the same unit, where this one was reported within the company's
 * repeat days after it and its file names no earlier job itself. On one day the job number decides which is earlier.
 */
export function suggestCallbacks(which: string): string {
  return `insert into suggested_callbacks (unit_id, job_id, model_id, callback_of, days)
    select unit_id, job_id, model_id, previous_number, failed_on - previous_on
    from (select j.unit_id, j.job_id, u.model_id, j.callback_of, j.failed_on,
            lag(j.job_number) over trouble as previous_number, lag(j.completed_on) over trouble as previous_on
          from units u join jobs j using (unit_id) where ${which} and j.status = 'closed' and j.component is not null
          window trouble as (partition by j.unit_id, j.component order by j.completed_on, j.job_number)) j, shop
    where callback_of is null and previous_on <= failed_on and failed_on - previous_on <= shop.repeat_days`;
}
