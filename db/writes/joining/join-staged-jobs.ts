import type { Transaction } from "@/db/database-types";
import { run } from "../staging/run";
import type { Staged } from "../staging/staged-kind";
import { moveJobs } from "./move-jobs";

/**
 * Jobs that are on file without a serial join the unit whose serial the staged row gives. The placeholder stays, empty,
 * so that taking the load back can move the job back. A load that gives the serial of a joined job anew upholds the join.
 */
export async function joinStagedJobs(tx: Transaction, { table }: Staged, batchId: number): Promise<void> {
  await run(
    tx,
    `insert into job_joins (job_id, from_unit_id, to_unit_id, batch_id, at)
     select distinct j.job_id, j.from_unit_id, j.to_unit_id, ${batchId}, now() from ${table} s join job_joins j on j.job_id = s.job_id and j.to_unit_id = s.unit_id
     where j.undone_at is null and s.fate is not null and s.serial_normalised is not null and s.joins_from is null`,
  );
  await run(
    tx,
    `create temporary table moving on commit drop as
     select distinct job_id, joins_from as from_unit, unit_id as to_unit from ${table} where fate is not null and joins_from is not null`,
  );
  await run(
    tx,
    `insert into job_joins (job_id, from_unit_id, to_unit_id, batch_id, at) select job_id, from_unit, to_unit, ${batchId}, now() from moving`,
  );
  await moveJobs(tx, "moving");
  await run(tx, "drop table moving");
}
