import { sql } from "drizzle-orm";
import type { Day } from "@/lib/calendar/day";
import type { Cause } from "@/lib/domain/cause";
import type { EarlierJob, PayerKind } from "@/lib/domain/job";
import type { Reader } from "../database-types";
import { keyArray } from "./money-units";

/** Closed jobs of units that had more than one, the newest first, with the components that were fitted on them. */
export async function loadEarlierJobs(
  db: Reader,
  unitIds: readonly string[],
): Promise<ReadonlyMap<string, readonly EarlierJob[]>> {
  const found = new Map<string, EarlierJob[]>();
  const rows = await db.rows<Row>(sql`
    select j.unit_id::text, j.job_number, j.completed_on::text, j.component, j.symptom, j.cause, j.requested_on::text, j.payer,
      (select array_agg(coalesce(p.component, j.component)) from part_lines p
       where p.unit_id = j.unit_id and p.job_id = j.job_id and p.role = 'fitted') as fitted
    from jobs j join (select unit_id from jobs where unit_id = any(${keyArray(unitIds)}) and status = 'closed' group by unit_id having count(*) > 1) m using (unit_id)
    where j.status = 'closed' order by j.completed_on desc, j.job_number desc`);
  for (const row of rows) {
    const of = found.get(row.unit_id);
    const job = earlierJob(row);
    if (of === undefined) found.set(row.unit_id, [job]);
    else of.push(job);
  }
  return found;
}

type Row = {
  unit_id: string;
  job_number: string;
  completed_on: Day;
  component: string | null;
  symptom: string | null;
  cause: Cause;
  requested_on: Day | null;
  payer: PayerKind;
  fitted: (string | null)[] | null;
};

function earlierJob(row: Row): EarlierJob {
  return {
    jobNumber: row.job_number,
    completedOn: row.completed_on,
    component: row.component ?? undefined,
    symptom: row.symptom ?? undefined,
    cause: row.cause,
    requestedOn: row.requested_on ?? undefined,
    payer: row.payer,
    fitted: (row.fitted ?? []).filter((component) => component !== null),
  };
}
