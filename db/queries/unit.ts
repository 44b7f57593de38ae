import { desc, eq } from "drizzle-orm";
import type { Day } from "@/lib/calendar/day";
import type { ClosedJob } from "@/lib/domain/job";
import type { ProductType } from "@/lib/domain/product-type";
import type { InServiceBasis, Unit } from "@/lib/domain/unit";
import type { Reader } from "../database-types";
import { makers, models } from "../schema/catalogue";
import { jobs } from "../schema/jobs";
import { units } from "../schema/register";
import { closedJob, unitOf } from "./job-rows";

export interface UnitWithJobs {
  readonly unit: Unit;
  readonly makerId: number;
  readonly identified: boolean;
  readonly inRegister: boolean;
  readonly inServiceOn: Day | undefined;
  readonly inServiceBasis: InServiceBasis | undefined;
  readonly batchId: number | null;
  /** The latest first. */
  readonly jobs: readonly ClosedJob[];
}

/** One unit and all its jobs; undefined where there is none of that id. */
export async function loadUnit(db: Reader, unitId: string): Promise<UnitWithJobs | undefined> {
  if (!/^\d{1,19}$/.test(unitId) || BigInt(unitId) > 9_223_372_036_854_775_807n) return undefined;
  const [row] = await db
    .select({ unit: units, model: models, maker: makers })
    .from(units)
    .innerJoin(models, eq(models.modelId, units.modelId))
    .innerJoin(makers, eq(makers.makerId, models.makerId))
    .where(eq(units.unitId, unitId));
  if (row === undefined) return undefined;
  const rows = await db
    .select()
    .from(jobs)
    .where(eq(jobs.unitId, unitId))
    .orderBy(desc(jobs.completedOn), desc(jobs.jobNumber));
  return {
    unit: unitOf(row.unit, {
      maker: row.maker.name,
      model: row.model.number,
      productType: row.model.productType as ProductType,
    }), // the schema's key
    makerId: row.maker.makerId,
    identified: row.unit.identified,
    inRegister: row.unit.inRegister,
    inServiceOn: row.unit.inServiceOn ?? undefined,
    inServiceBasis: row.unit.inServiceBasis ?? undefined,
    batchId: row.unit.batchId,
    jobs: rows.map(closedJob),
  };
}
