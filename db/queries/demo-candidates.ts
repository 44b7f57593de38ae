import { sql } from "drizzle-orm";
import type { Day } from "@/lib/calendar/day";
import type { Reader } from "../database-types";

export interface DemoCandidate {
  readonly jobNumber: string;
  readonly completedOn: Day;
  readonly policyId: number;
}

/**
 * Failures of the invented company on which nobody has claimed, spread over the days; those of the first year, which
 * every maker covers, come first. Jobs with photos are left for
 * whoever tries out how a claim is built.
 */
export async function loadDemoCandidates(
  db: Reader,
  { from, to }: { readonly from: Day; readonly to: Day },
): Promise<DemoCandidate[]> {
  const rows = await db.rows<{ job_number: string; completed_on: Day; policy_id: number }>(sql`
    select j.job_number, j.completed_on::text as completed_on, p.policy_id
    from jobs j join units u using (unit_id) join models m using (model_id)
    join lateral (select policy_id from policies where maker_id = m.maker_id
      and u.sold_on >= effective_from and u.sold_on <= coalesce(effective_to, u.sold_on) order by version desc limit 1) p on true
    where j.counted_as = 'failure' and u.identified and j.completed_on between ${from} and ${to}
      and not exists (select from attachments a where a.unit_id = j.unit_id and a.job_id = j.job_id)
      and not exists (select from claims c where c.unit_id = j.unit_id and c.job_id = j.job_id)
    order by u.sold_on <= j.completed_on - interval '1 year', hashtextextended(j.job_number, 1) limit 400`);
  return rows.map((row) => ({ jobNumber: row.job_number, completedOn: row.completed_on, policyId: row.policy_id }));
}
