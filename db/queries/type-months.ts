import { sql } from "drizzle-orm";
import type { Day } from "@/lib/calendar/day";
import type { ProductType } from "@/lib/domain/product-type";
import type { Reader } from "../database-types";

/** Failures of all components of one kind of machine in one month, and the machines that came under watch and left it. */
export interface TypeMonth {
  readonly productType: ProductType;
  /** Months since the year 0. */
  readonly month: number;
  readonly failures: number;
  readonly came: number;
  readonly left: number;
}

/** From the counts, before a day. */
export async function loadTypeMonths(db: Reader, until: Day): Promise<readonly TypeMonth[]> {
  const month = (day: string) => sql.raw(`(extract(year from ${day})::int * 12 + extract(month from ${day})::int - 1)`);
  return await db.rows<Record<string, unknown> & TypeMonth>(sql`
    with each as (
      select model_id, ${month("failed_on")} as month, jobs as failures, 0 as came, 0 as left_it from job_cells
      where counted_as = 'failure' and in_service_on is not null and failed_on < ${until}::date
      union all select model_id, ${month("observed_from")}, 0, units, 0 from unit_windows where observed_from < ${until}::date
      union all select model_id, ${month("retired_on")}, 0, 0, units from unit_windows where retired_on < ${until}::date)
    select m.product_type as "productType", e.month, sum(e.failures)::int as failures, sum(e.came)::int as came, sum(e.left_it)::int as left
    from each e join models m using (model_id) group by 1, 2 order by 1, 2`);
}
