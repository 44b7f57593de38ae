import { sql } from "drizzle-orm";
import type { ProductType } from "@/lib/domain/product-type";
import { ageBandOf, type SymptomCell } from "@/lib/sheets/sheet-basis";
import type { Reader } from "../database-types";

/** Closed jobs with the symptom on that kind of appliance, by model, band of age and what was behind it. */
export async function loadSymptomCells(
  db: Reader,
  { symptom, productType }: { readonly symptom: string; readonly productType: ProductType },
): Promise<readonly SymptomCell[]> {
  const rows = await db.rows<{ modelId: number; days: number | null; of: string; jobs: number }>(sql`
    select c.model_id as "modelId", c.failed_on - c.in_service_on as days,
      case when c.counted_as = 'failure' then 'component:' || c.component else 'cause:' || c.cause end as of, sum(c.jobs)::integer as jobs
    from job_cells c join models m using (model_id)
    where c.symptom = ${symptom} and m.product_type = ${productType} group by 1, 2, 3`);
  const cells = new Map<string, SymptomCell>();
  for (const { modelId, days, of, jobs } of rows) {
    const ageBand = ageBandOf(days ?? undefined);
    const name = `${modelId}/${ageBand}/${of}`;
    cells.set(name, { modelId, ageBand, of, jobs: jobs + (cells.get(name)?.jobs ?? 0) });
  }
  return [...cells.values()];
}
