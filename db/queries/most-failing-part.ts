import { sql } from "drizzle-orm";
import type { Reader } from "../database-types";

export interface PartOfModel {
  readonly maker: string;
  readonly model: string;
  readonly component: string;
  readonly name: string;
}

/** The component of a model with the most failures that a rate can count: the best example that the data have. */
export async function loadMostFailingPart(db: Reader): Promise<PartOfModel | undefined> {
  const [row] = await db.rows<{ maker: string; model: string; component: string; name: string }>(sql`
    select k.name as maker, m.number as model, c.component, w.name
    from job_cells c join models m using (model_id) join makers k using (maker_id) join components w on w.key = c.component
    where c.counted_as = 'failure' and c.failed_on >= c.observed_from
    group by 1, 2, 3, 4 order by sum(c.jobs) desc, 1, 2, 3 limit 1`);
  return row;
}
