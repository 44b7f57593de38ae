// What a batch changes is counted anew around its units and not for all of their models: a company's million jobs are
// not counted again for a week's twenty thousand.
import type { Transaction } from "../database-types";
import { placedUnits } from "../placed-units";
import type { Filling } from "./bulk/filling";
import {
  countJobCells,
  countRepeatedJobs,
  countUnitWindows,
  countUnplacedUnits,
  lockCounts,
  placeInService,
  refreshCounts,
  suggestCallbacks,
} from "./refresh-counts";
import { rowsOf, run } from "./staging/run";

export interface CountsAround {
  /**
   * Counts anew what has changed since, in the same transaction.
   * @param insert  stores what is counted where tables are filled, which are those of a company that had no units
   */
  readonly refresh: (insert?: Filling["insert"]) => Promise<void>;
}

/** Where more of all units than one in so many change, counting their models anew reads less. */
const few = 5;

/**
 * Notes which rows of the counts some units stand in, before the units or their jobs change. No row of `job_cells` counts
 * jobs of two days, nor one of `unit_windows` units of two days, so that what may differ afterwards is of the days that
 * these units and their jobs had or have; everything else is told of each unit by itself.
 * Checked: tests/db/counts-around.test.ts, against counting everything.
 * @param unitIds  SQL for the keys of all units that will change, those that are still to come among them
 */
export async function countsAround(tx: Transaction, unitIds: string): Promise<CountsAround> {
  const noteUnits = `insert into counted_units select unit_id from (${unitIds}) t(unit_id) where unit_id is not null except select unit_id from counted_units`;
  await run(
    tx,
    "create temporary table counted_units (unit_id bigint not null) on commit drop",
    noteUnits,
    "analyze counted_units",
    "create temporary table counted_days (model_id integer, failed_on date) on commit drop",
    "create temporary table counted_places (model_id integer, in_service_on date) on commit drop",
  );
  const [size] = await rowsOf<{ many: boolean }>(
    tx,
    `select (select count(*) from counted_units) * ${few} > (select count(*) from units) as many`,
  );
  await notePlaces(tx);
  if (size?.many !== true) await noteDays(tx);
  return {
    refresh: async (insert) => {
      await run(tx, noteUnits); // a job without a serial may have come to a unit of its own since
      await placeInService(tx, `u.unit_id in (${these})`);
      await notePlaces(tx);
      const models = await rowsOf<{ id: number }>(tx, "select distinct model_id as id from counted_places");
      const ids = models.map(({ id }) => id);
      if (size?.many === true) return await refreshCounts(tx, ids, insert);
      await noteDays(tx);
      await lockCounts(tx, ids);
      await countDays(tx);
      await countPlaces(tx);
      await countUnits(tx);
    },
  };
}

const these = "select unit_id from counted_units";

async function noteDays(tx: Transaction): Promise<void> {
  await run(
    tx,
    `insert into counted_days select distinct u.model_id, j.failed_on from counted_units c join units u using (unit_id) join jobs j using (unit_id)
     where j.counted_as <> 'nothing'`,
  );
}

/** A null day stands for units of the model without exposure. */
async function notePlaces(tx: Transaction): Promise<void> {
  await run(
    tx,
    `insert into counted_places select distinct model_id, case when reason is null then in_service_on end from ${placedUnits(`u.unit_id in (${these})`)} p`,
  );
}

/** Which failure came before is told by all jobs of a unit, so units are read whole of which one job fell on such a day. */
async function countDays(tx: Transaction): Promise<void> {
  const onThem = (row: string) =>
    `(${row}.model_id, ${row}.failed_on) in (select model_id, failed_on from counted_days)`;
  await run(
    tx,
    "analyze counted_days",
    `create temporary table counted_beside on commit drop as
     select distinct unit_id from units u join jobs j using (unit_id) where j.counted_as <> 'nothing' and (u.model_id, j.failed_on) in (select model_id, failed_on from counted_days)`,
    "analyze counted_beside",
    `delete from job_cells c where ${onThem("c")}`,
    countJobCells(placedUnits("u.unit_id in (select unit_id from counted_beside)"), onThem("c")),
  );
}

async function countPlaces(tx: Transaction): Promise<void> {
  const onThem = (row: string) =>
    `(${row}.model_id, ${row}.in_service_on) in (select model_id, in_service_on from counted_places)`;
  const without = "(select model_id from counted_places where in_service_on is null)";
  await run(
    tx,
    "analyze counted_places",
    `delete from unit_windows w where ${onThem("w")}`,
    countUnitWindows(placedUnits(onThem("u"))),
    `delete from unplaced_units where model_id in ${without}`,
    countUnplacedUnits(placedUnits(`u.model_id in ${without}`)),
  );
}

async function countUnits(tx: Transaction): Promise<void> {
  const of = `u.unit_id in (${these})`;
  await run(
    tx,
    `delete from repeated_jobs where unit_id in (${these})`,
    countRepeatedJobs(placedUnits(of)),
    `delete from suggested_callbacks where unit_id in (${these})`,
    suggestCallbacks(of),
  );
}
