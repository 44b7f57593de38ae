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
  const rows = await db.rows<CandidateRow>(sql`
    select j.job_number, j.completed_on::text as completed_on, p.policy_id
    from jobs j join units u using (unit_id) join models m using (model_id)
    join lateral (select policy_id from policies where maker_id = m.maker_id
      and u.sold_on >= effective_from and u.sold_on <= coalesce(effective_to, u.sold_on) order by version desc limit 1) p on true
    where j.counted_as = 'failure' and u.identified and j.completed_on between ${from} and ${to}
      and not exists (select from attachments a where a.unit_id = j.unit_id and a.job_id = j.job_id)
      and not exists (select from claims c where c.unit_id = j.unit_id and c.job_id = j.job_id)
    order by u.sold_on <= j.completed_on - interval '1 year', hashtextextended(j.job_number, 1) limit 400`);
  return rows.map(candidateOf);
}

/** Jobs that a service contract would pay and on which nobody has claimed, spread over the days; those with photos are left. */
export async function loadContractCandidates(
  db: Reader,
  { from, to }: { readonly from: Day; readonly to: Day },
): Promise<DemoCandidate[]> {
  const rows = await db.rows<CandidateRow>(sql`
    select j.job_number, j.completed_on::text as completed_on, w.policy_id
    from unclaimed_work w join jobs j using (unit_id, job_id) join policies p using (policy_id)
    where w.claim_number is null and p.document -> 'payer' ->> 'kind' = 'contract' and j.completed_on between ${from} and ${to}
      and not exists (select from attachments a where a.unit_id = j.unit_id and a.job_id = j.job_id)
      and not exists (select from claims c where c.unit_id = j.unit_id and c.job_id = j.job_id)
    order by hashtextextended(j.job_number, 1) limit 200`);
  return rows.map(candidateOf);
}

type CandidateRow = { job_number: string; completed_on: Day; policy_id: number };

function candidateOf(row: CandidateRow): DemoCandidate {
  return { jobNumber: row.job_number, completedOn: row.completed_on, policyId: row.policy_id };
}
