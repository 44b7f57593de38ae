import { sql } from "drizzle-orm";
import type { CoverageFile } from "@/lib/coverage/job-coverage-facts";
import type { EarlierJob, JobRecord } from "@/lib/domain/job";
import type { ProductType } from "@/lib/domain/product-type";
import type { Unit } from "@/lib/domain/unit";
import type { Reader } from "../database-types";
import { makers, models } from "../schema/catalogue";
import { jobs } from "../schema/jobs";
import { units } from "../schema/register";
import { loadCoverageFiles } from "./coverage-files";
import { closedJob, type JobRow, jobColumnsOfCounts, unitColumnsOfCounts, unitOf } from "./job-rows";
import { loadEarlierJobs } from "./money-earlier";
import { among, type JobKey, loadUnderJobs } from "./money-under";
import { ofUnits, type UnitScope } from "./money-units";
import { loadPlainRows } from "./plain-rows";

/** A closed job with everything under it and what was done on its unit before. */
export interface MoneyJob extends JobKey {
  readonly modelId: number;
  readonly makerId: number;
  readonly record: JobRecord;
  /** What is on file for cover beside it. */
  readonly file: CoverageFile;
}

/** These jobs, whichever they are. */
export async function loadMoneyJobs(db: Reader, keys: readonly JobKey[]): Promise<MoneyJob[]> {
  if (keys.length === 0) return [];
  const scope: UnitScope = { kind: "units", unitIds: [...new Set(keys.map(({ unitId }) => unitId))] };
  const rows = await loadPlainRows(db, jobs, sql`where ${among(keys, scope)}`, { without: jobColumnsOfCounts });
  return await completeJobs(db, rows, scope);
}

/**
 * Jobs with all that is on file about them and their units, at the cost of ten reads.
 * @param scope  of which all these jobs are
 */
export async function completeJobs(db: Reader, rows: readonly JobRow[], scope: UnitScope): Promise<MoneyJob[]> {
  if (rows.length === 0) return [];
  const unitIds = [...new Set(rows.map(({ unitId }) => unitId))];
  const unitOfId = await loadUnits(db, unitIds, scope);
  const earlier = await loadEarlierJobs(db, unitIds, scope);
  const files = await loadCoverageFiles(db, unitIds);
  const under = await loadUnderJobs(db, rows, scope);
  const none: readonly EarlierJob[] = [];
  return rows.flatMap((row): MoneyJob[] => {
    const { unitId, jobId } = row;
    const known = unitOfId.get(unitId);
    if (known === undefined) return [];
    const others = earlier.get(unitId);
    const { partLines, readings, attachments } = under(row);
    const record = {
      job: closedJob(row),
      unit: known.unit,
      earlier: others === undefined ? none : others.filter((other) => isEarlier(other, row)),
      partLines,
      readings,
      attachments,
    };
    return [{ unitId, jobId, modelId: known.modelId, makerId: known.makerId, record, file: files(unitId) }];
  });
}

interface KnownUnit {
  readonly unit: Unit;
  readonly modelId: number;
  readonly makerId: number;
}

async function loadUnits(
  db: Reader,
  unitIds: readonly string[],
  scope: UnitScope,
): Promise<ReadonlyMap<string, KnownUnit>> {
  const kinds = await loadKinds(db);
  const rows = await loadPlainRows(db, units, sql`where ${ofUnits(sql`t.unit_id`, unitIds, scope)}`, {
    without: unitColumnsOfCounts,
  });
  return new Map(
    rows.flatMap((row) => {
      const kind = kinds.get(row.modelId);
      const { modelId, makerId } = row;
      return kind === undefined ? [] : [[row.unitId, { unit: unitOf(row, kind), modelId, makerId }] as const];
    }),
  );
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
