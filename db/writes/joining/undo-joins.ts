import type { Transaction } from "@/db/database-types";
import { rowsOf, run } from "../staging/run";
import { claimSent } from "./claim-sent";
import { moveJobs } from "./move-jobs";

/**
 * Jobs that joined their unit by this batch, and by no other nor by hand, go back to their placeholder, where that is
 * still there and no claim on it was sent. Gives the models whose counts that touches.
 */
export async function undoJoins(tx: Transaction, batchId: number): Promise<readonly number[]> {
  await run(
    tx,
    `create temporary table moving_back on commit drop as
     select j.job_id, j.to_unit_id as from_unit, j.from_unit_id as to_unit from job_joins j
     join units u on u.unit_id = j.from_unit_id join jobs b on b.unit_id = j.to_unit_id and b.job_id = j.job_id
     where j.batch_id = ${batchId} and j.undone_at is null and not ${claimSent("j.to_unit_id", "j.job_id")}
       and not exists (select from job_joins o where o.job_id = j.job_id and o.undone_at is null and o.batch_id is distinct from j.batch_id)`,
  );
  const models = await rowsOf<{ id: number }>(
    tx,
    `select distinct u.model_id as id from moving_back m join units u on u.unit_id in (m.from_unit, m.to_unit)`,
  );
  await moveJobs(tx, "moving_back");
  await run(tx, `update job_joins set undone_at = now() where batch_id = ${batchId} and undone_at is null`);
  return models.map(({ id }) => id);
}
