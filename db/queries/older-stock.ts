import { sql } from "drizzle-orm";
import type { Reader } from "../database-types";

/** Stock of a number that is no current one: superseded, so that nothing is expected under it. */
export interface OlderStock {
  readonly partKey: string;
  readonly partNumber: string;
  readonly onHand: number;
}

export async function loadOlderStock(db: Reader): Promise<readonly OlderStock[]> {
  return await db.rows<Record<string, unknown> & OlderStock>(sql`
    select l.part_key as "partKey", (select max(part_number) from stock_movements m where m.part_key = l.part_key) as "partNumber",
      sum(l.on_hand)::int as "onHand"
    from stock_levels l where l.on_hand > 0 and not exists (select from part_outlooks o where o.part_key = l.part_key)
    group by l.part_key order by 2`);
}
