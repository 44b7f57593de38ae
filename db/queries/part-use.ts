import { sql } from "drizzle-orm";
import type { Day } from "@/lib/calendar/day";
import type { Reader } from "../database-types";

export interface PartUse {
  readonly partNumber: string;
  readonly description: string;
  /** Quantity fitted in each whole calendar month, oldest first, months without use included. */
  readonly monthly: readonly number[];
}

/**
 * Use of every part over the whole months before a day, as far back as the jobs go but 72 months at most.
 * Only parts fitted on closed jobs; core charges and freight are no parts.
 */
export async function loadPartUse(db: Reader, until: Day): Promise<PartUse[]> {
  const rows = await db.rows<{ part_number: string; description: string; monthly: number[] }>(sql`
    with span as (
      select greatest(date_trunc('month', min(completed_on)), date_trunc('month', ${until}::date) - interval '72 months')::date as first,
        (date_trunc('month', ${until}::date) - interval '1 day')::date as last
      from jobs where status = 'closed'),
    months as (
      select generate_series(date_trunc('month', first), last, interval '1 month')::date as month from span),
    used as (
      select p.part_number, date_trunc('month', j.completed_on)::date as month, sum(p.quantity)::int as quantity
      from part_lines p join jobs j using (unit_id, job_id), span
      where p.role = 'fitted' and j.status = 'closed' and j.completed_on between span.first and span.last
      group by 1, 2),
    named as (
      select distinct on (p.part_number) p.part_number, p.description
      from part_lines p join jobs j using (unit_id, job_id) order by p.part_number, j.completed_on desc)
    select n.part_number, n.description, array_agg(coalesce(u.quantity, 0) order by m.month)::int[] as monthly
    from named n cross join months m left join used u on u.part_number = n.part_number and u.month = m.month
    where n.part_number in (select part_number from used)
    group by n.part_number, n.description order by n.part_number`);
  return rows.map((row) => ({ partNumber: row.part_number, description: row.description, monthly: row.monthly }));
}
