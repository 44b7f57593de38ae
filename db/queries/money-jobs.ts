import { sql } from "drizzle-orm";
import type { CoverageFile } from "@/lib/coverage/job-coverage-facts";
import type { EarlierJob, JobRecord } from "@/lib/domain/job";
import type { ProductType } from "@/lib/domain/product-type";
import type { Reader } from "../database-types";
import { makers, models } from "../schema/catalogue";
import { jobs } from "../schema/jobs";
import { units } from "../schema/register";
import { loadCoverageFiles } from "./coverage-files";
import { closedJob, unitOf } from "./job-rows";
import { loadEarlierJobs } from "./money-earlier";
import { type JobKey, loadPartLines } from "./money-under";
import { inScope, type UnitScope } from "./money-units";

/** A closed job with its unit, its part lines and what was done on the unit before; its proof is read apart. */
export interface MoneyJob extends JobKey {
  readonly modelId: number;
  readonly makerId: number;
  readonly record: Pick<JobRecord, "job" | "unit" | "earlier" | "partLines">;
  /** What is on file for cover beside it. */
  readonly file: CoverageFile;
}

/** These jobs, whichever they are, at the cost of nine reads. */
export async function loadMoneyJobs(db: Reader, keys: readonly JobKey[]): Promise<MoneyJob[]> {
  if (keys.length === 0) return [];
  const unitIds = [...new Set(keys.map(({ unitId }) => unitId))];
  const wanted = new Set(keys.map(({ unitId, jobId }) => `${unitId} ${jobId}`));
  const kinds = await loadKinds(db);
  const scope: UnitScope = { kind: "units", unitIds };
  const unitRows = await db
    .select()
    .from(units)
    .where(inScope(sql`${units.unitId}`, scope));
  const unitOfId = new Map(unitRows.map((row) => [row.unitId, row]));
  const jobRows = await db
    .select()
    .from(jobs)
    .where(
      sql`(${jobs.unitId}, ${jobs.jobId}) in (select * from unnest(${sql.param(keys.map(({ unitId }) => unitId))}::bigint[], ${sql.param(keys.map(({ jobId }) => jobId))}::bigint[]))`,
    );
  const earlier = await loadEarlierJobs(db, unitIds);
  const files = await loadCoverageFiles(db, unitIds);
  const partsOf = await loadPartLines(db, keys);
  return jobRows.flatMap((job): MoneyJob[] => {
    const { unitId, jobId } = job;
    const unit = unitOfId.get(unitId);
    const kind = unit && kinds.get(unit.modelId);
    if (unit === undefined || kind === undefined || !wanted.has(`${unitId} ${jobId}`)) return [];
    const record = {
      job: closedJob(job),
      unit: unitOf(unit, kind),
      earlier: (earlier.get(unitId) ?? []).filter((other) => isEarlier(other, job)),
      partLines: partsOf(job),
    };
    return [{ unitId, jobId, modelId: unit.modelId, makerId: unit.makerId, record, file: files(unitId) }];
  });
}

/** Every model with its maker; a company sees some hundreds. */
async function loadKinds(db: Reader) {
  const rows = await db
    .select({ modelId: models.modelId, model: models.number, productType: models.productType, maker: makers.name })
    .from(models)
    .innerJoin(makers, sql`${makers.makerId} = ${models.makerId}`);
  return new Map(
    rows.map(({ modelId, model, productType, maker }) => [
      modelId,
      { model, maker, productType: productType as ProductType }, // the schema's key
    ]),
  );
}

/** Completed before, or on the same day under a lower number. */
function isEarlier(other: EarlierJob, job: Pick<JobRecord["job"], "completedOn" | "jobNumber">): boolean {
  if (other.completedOn !== job.completedOn) return other.completedOn < job.completedOn;
  return other.jobNumber < job.jobNumber;
}
