import { sql } from "drizzle-orm";
import type { ProductType } from "@/lib/domain/product-type";
import { ageBandOf } from "@/lib/sheets/sheet-basis";
import type { SymptomPart } from "@/lib/sheets/symptom-parts";
import { type SymptomGroup, seasons } from "@/lib/sheets/symptom-shares";
import type { Reader } from "../database-types";

interface SymptomOf {
  readonly symptom: string;
  readonly productType: ProductType;
}

/** Closed jobs with the symptom on that kind of appliance, by model, age, season and what was behind it. */
export async function loadSymptomGroups(
  db: Reader,
  { symptom, productType }: SymptomOf,
): Promise<readonly SymptomGroup[]> {
  const rows = await db.rows<Row>(sql`
    select m.model_id as "modelId", k.name || ' ' || m.number as model, j.failed_on - u.in_service_on as days,
      extract(quarter from j.failed_on)::integer as quarter,
      case when j.counted_as = 'failure' then 'component:' || j.component else 'cause:' || j.cause end as of,
      count(*)::integer as jobs, count(*) filter (where j.visits = 1)::integer as "firstVisit"
    from models m join units u using (model_id) join jobs j using (unit_id) join makers k on k.maker_id = m.maker_id
    where m.product_type = ${productType} and j.symptom = ${symptom} and j.counted_as <> 'nothing' group by 1, 2, 3, 4, 5`);
  return rows.map(({ days, quarter, ...row }) => ({
    ...row,
    ageBand: ageBandOf(days ?? undefined),
    season: seasons[quarter - 1] ?? seasons[0],
  }));
}

type Row = {
  readonly modelId: number;
  readonly model: string;
  readonly days: number | null;
  readonly quarter: number;
  readonly of: string;
  readonly jobs: number;
  readonly firstVisit: number;
};

/** Parts that were fitted on these jobs, by model, age and season. A part that a job needed twice is on one job. */
export async function loadSymptomParts(
  db: Reader,
  { symptom, productType }: SymptomOf,
): Promise<readonly SymptomPart[]> {
  const rows = await db.rows<Omit<Row, "of" | "firstVisit"> & Omit<SymptomPart, "ageBand" | "season">>(sql`
    select p.part_number as "partNumber", max(p.description) as description, m.model_id as "modelId", k.name || ' ' || m.number as model,
      j.failed_on - u.in_service_on as days, extract(quarter from j.failed_on)::integer as quarter,
      count(distinct j.job_id)::integer as jobs, sum(p.quantity)::integer as pieces
    from models m join units u using (model_id) join jobs j using (unit_id) join part_lines p using (unit_id, job_id) join makers k on k.maker_id = m.maker_id
    where m.product_type = ${productType} and j.symptom = ${symptom} and j.counted_as <> 'nothing' and p.role = 'fitted'
    group by p.part_number, 3, 4, 5, 6`);
  return rows.map(({ days, quarter, ...row }) => ({
    ...row,
    ageBand: ageBandOf(days ?? undefined),
    season: seasons[quarter - 1] ?? seasons[0],
  }));
}

/** Symptoms and kinds of appliance that closed jobs name, the commonest first. */
export async function loadSymptomList(db: Reader): Promise<readonly (SymptomOf & { readonly jobs: number })[]> {
  return await db.rows<{ symptom: string; productType: ProductType; jobs: number }>(sql`
    select c.symptom, m.product_type as "productType", sum(c.jobs)::integer as jobs
    from job_cells c join models m using (model_id) where c.symptom is not null group by 1, 2 order by jobs desc, 1, 2`);
}
