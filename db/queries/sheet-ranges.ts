import { sql } from "drizzle-orm";
import type { ProductType } from "@/lib/domain/product-type";
import type { SourceMark } from "@/lib/domain/reading";
import type { Reader } from "../database-types";

export interface SheetModel {
  readonly modelId: number;
  readonly name: string;
}

/** Models of a kind of appliance, by maker and number. */
export async function loadSheetModels(db: Reader, productType: ProductType): Promise<readonly SheetModel[]> {
  return await db.rows<{ modelId: number; name: string }>(sql`
    select m.model_id as "modelId", k.name || ' ' || m.number as name from models m join makers k using (maker_id)
    where m.product_type = ${productType} order by k.name, m.number limit 500`);
}

/** One range of a model as the sheet's page lists it, in force or hidden by one that was set here. */
export interface SheetRange {
  /** Undefined where a file gave it. */
  readonly rangeId: number | undefined;
  readonly model: string;
  readonly check: string;
  readonly condition: string;
  readonly low: number | undefined;
  readonly high: number | undefined;
  readonly unit: string;
  readonly source: string;
  readonly mark: SourceMark;
  /** Who set it, when and why; undefined where a file gave it. */
  readonly set: { readonly by: string; readonly at: string; readonly reason: string } | undefined;
  /** A range of a file in whose place another was set. */
  readonly isReplaced: boolean;
}

/** Ranges of all models of that kind for these checks. */
export async function loadSheetRanges(
  db: Reader,
  { productType, checks }: { readonly productType: ProductType; readonly checks: readonly string[] },
): Promise<readonly SheetRange[]> {
  if (checks.length === 0) return [];
  const rows = await db.rows<Row>(sql`
    select r.*, k.name || ' ' || m.number as model from (
      select range_id::integer as "rangeId", model_id, check_key as check, condition, low, high, unit, source, mark, by, at::text, reason, false as "isReplaced"
      from own_ranges where lifted_at is null
      union all
      select null, e.model_id, e.check_key, e.condition, e.low, e.high, e.unit, e.source, e.mark, null, null, null,
        exists (select from own_ranges o where o.lifted_at is null and o.model_id = e.model_id and o.check_key = e.check_key and o.condition = e.condition)
      from expected_ranges e) r
    join models m using (model_id) join makers k using (maker_id)
    where m.product_type = ${productType} and r.check = any (${sql.param([...checks])}::text[])
    order by k.name, m.number, r.check, r.condition, r."rangeId" nulls last limit 500`);
  return rows.map(({ rangeId, low, high, by, at, reason, ...row }) => ({
    ...row,
    rangeId: rangeId ?? undefined,
    low: low ?? undefined,
    high: high ?? undefined,
    set: by === null || at === null || reason === null ? undefined : { by, at, reason },
  }));
}

type Row = {
  readonly rangeId: number | null;
  readonly model: string;
  readonly check: string;
  readonly condition: string;
  readonly low: number | null;
  readonly high: number | null;
  readonly unit: string;
  readonly source: string;
  readonly mark: SourceMark;
  readonly by: string | null;
  readonly at: string | null;
  readonly reason: string | null;
  readonly isReplaced: boolean;
};
