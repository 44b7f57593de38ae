import { sql } from "drizzle-orm";
import type { ExpectedRange } from "@/lib/domain/reading";
import type { Reader } from "../database-types";

/** What is expected of each check on one model: what somebody set here first, then what files gave. */
export async function loadExpectedRanges(db: Reader, modelId: number): Promise<ExpectedRange[]> {
  const rows = await db.rows<RangeRow>(
    sql`select * from (${inForce}) r where r."modelId" = ${modelId} order by r.own desc, r.condition`,
  );
  return rows.map(rangeOf);
}

/** The same of every model, by its id. */
export async function loadAllExpectedRanges(db: Reader): Promise<ReadonlyMap<number, readonly ExpectedRange[]>> {
  const byModel = new Map<number, ExpectedRange[]>();
  for (const row of await db.rows<RangeRow>(sql`select * from (${inForce}) r order by r.own desc, r.condition`))
    byModel.set(row.modelId, [...(byModel.get(row.modelId) ?? []), rangeOf(row)]);
  return byModel;
}

/** A range of a file stands back where one for the same model, check and condition was set here. */
const inForce = sql`
  select model_id as "modelId", check_key as check, condition, low, high, unit, source, mark, true as own from own_ranges where lifted_at is null
  union all
  select e.model_id, e.check_key, e.condition, e.low, e.high, e.unit, e.source, e.mark, false from expected_ranges e
  where not exists (select from own_ranges o where o.lifted_at is null
    and o.model_id = e.model_id and o.check_key = e.check_key and o.condition = e.condition)`;

type RangeRow = Omit<ExpectedRange, "low" | "high" | "condition"> & {
  readonly modelId: number;
  readonly condition: string;
  readonly low: number | null;
  readonly high: number | null;
  readonly own: boolean;
};

function rangeOf({ check, low, high, unit, condition, source, mark }: RangeRow): ExpectedRange {
  return {
    check,
    low: low ?? undefined,
    high: high ?? undefined,
    unit,
    condition: condition === "" ? undefined : condition,
    source,
    mark,
  };
}
