import { sql } from "drizzle-orm";
import { inTransaction } from "@/db/in-transaction";
import { normalised } from "@/lib/domain/normalised";
import { refreshUnclaimed } from "../money/refresh-unclaimed";
import { refreshCounts } from "../refresh-counts";
import { run } from "../staging/run";
import { intakeLock } from "../store-import";
import { claimSent } from "./claim-sent";
import { moveJobs } from "./move-jobs";

export interface JoinRequest {
  readonly jobNumber: string;
  readonly maker: string;
  readonly serial: string;
  readonly by: string;
  readonly reason: string;
}

export type JoinResult =
  | { readonly kind: "joined"; readonly unitId: string }
  | { readonly kind: "no such job" }
  | { readonly kind: "no such unit" }
  /** The job is not on a placeholder. */
  | { readonly kind: "has a serial"; readonly serial: string }
  /** What was sent names the unit as it was. */
  | { readonly kind: "claim sent" }
  | { readonly kind: "other kind of appliance"; readonly job: string; readonly unit: string };

/** A person says which unit a job without a serial was on. Loads that are taken back leave it there. */
export async function joinJobToUnit(request: JoinRequest): Promise<JoinResult> {
  return await inTransaction(async (tx) => {
    await run(tx, `select pg_advisory_xact_lock(${intakeLock})`);
    const [job] = await tx.rows<{
      jobId: string;
      unitId: string;
      modelId: number;
      kind: string;
      serial: string | null;
      sent: boolean;
    }>(sql`
      select j.job_id::text as "jobId", j.unit_id::text as "unitId", m.model_id as "modelId", m.product_type as kind, u.serial, ${sql.raw(claimSent("j.unit_id", "j.job_id"))} as sent
      from jobs j join units u using (unit_id) join models m using (model_id) where j.job_number = ${request.jobNumber}`);
    if (job === undefined) return { kind: "no such job" };
    if (job.serial !== null) return { kind: "has a serial", serial: job.serial };
    if (job.sent) return { kind: "claim sent" };
    const [unit] = await tx.rows<{ unitId: string; modelId: number; kind: string }>(sql`
      select u.unit_id::text as "unitId", m.model_id as "modelId", m.product_type as kind
      from units u join models m using (model_id) join makers k on k.maker_id = u.maker_id
      where k.normalised = ${normalised(request.maker)} and u.serial_normalised = ${normalised(request.serial)}`);
    if (unit === undefined) return { kind: "no such unit" };
    if (unit.kind !== job.kind) return { kind: "other kind of appliance", job: job.kind, unit: unit.kind };
    await tx.execute(sql`
      create temporary table moving on commit drop as select ${job.jobId}::bigint as job_id, ${job.unitId}::bigint as from_unit, ${unit.unitId}::bigint as to_unit`);
    await moveJobs(tx, "moving");
    await tx.execute(sql`
      insert into job_joins (job_id, from_unit_id, to_unit_id, by, reason, at)
      values (${job.jobId}, ${job.unitId}, ${unit.unitId}, ${request.by}, ${request.reason}, now())`);
    await tx.execute(sql`
      insert into hand_edits (table_name, key, column_name, value_before, value, at, by, reason)
      values ('jobs', ${unit.unitId}::text || chr(31) || ${job.jobId}::text, 'unit_id', to_jsonb(${job.unitId}::text), to_jsonb(${unit.unitId}::text), now(), ${request.by}, ${request.reason})`);
    await refreshCounts(tx, [job.modelId, unit.modelId]);
    await refreshUnclaimed(tx, [job.unitId, unit.unitId]);
    return { kind: "joined", unitId: unit.unitId };
  });
}
