import { sql } from "drizzle-orm";
import type { Day } from "@/lib/calendar/day";
import type { Taking } from "@/lib/forecast/fleet/part-taking";
import type { Reader } from "../database-types";

/** The same of one number, as jobs spell it. */
export interface NumberTaking extends Taking {
  readonly partNumber: string;
}

/** How closed jobs took these numbers, before a day. */
export async function loadNumberTaking(
  db: Reader,
  numbers: readonly string[],
  until: Day,
): Promise<readonly NumberTaking[]> {
  return await db.rows<Record<string, unknown> & NumberTaking>(sql`
    with taken as (
      select p.part_number, p.unit_id, p.job_id, sum(p.quantity)::int as pieces
      from part_lines p join jobs j using (unit_id, job_id)
      where p.role = 'fitted' and j.status = 'closed' and j.completed_on < ${until}::date
        and p.part_number = any(${sql.param([...numbers])}::text[])
      group by 1, 2, 3)
    select t.part_number as "partNumber", k.name as maker, t.pieces, count(*)::int as jobs
    from taken t join units u using (unit_id) join makers k on k.maker_id = u.maker_id
    where t.pieces > 0 group by 1, 2, 3 order by 1, 2, 3`);
}
