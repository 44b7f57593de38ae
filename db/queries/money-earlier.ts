import { sql } from "drizzle-orm";
import type { Day } from "@/lib/calendar/day";
import type { Cause } from "@/lib/domain/cause";
import type { EarlierJob, PayerKind } from "@/lib/domain/job";
import type { Reader } from "../database-types";
import { inScope, ofUnits, type UnitScope } from "./money-units";

/**
 * Closed jobs of units that had more than one, the newest first, with the components that were fitted on them.
 * @param scope  of which all these units are
 */
export async function loadEarlierJobs(
  db: Reader,
  unitIds: readonly string[],
  scope: UnitScope,
): Promise<ReadonlyMap<string, readonly EarlierJob[]>> {
  const found = new Map<string, EarlierJob[]>();
  const rows = await db.rows<Row>(sql`
    select j.unit_id::text, j.job_number, j.completed_on::text, j.component, j.symptom, j.cause, j.requested_on::text, j.payer, p.fitted
    from jobs j join (select unit_id from jobs where ${inScope(sql`unit_id`, scope)} and status = 'closed' group by unit_id having count(*) > 1) m using (unit_id)
    left join (select unit_id, job_id, string_agg(coalesce(component, ''), ',') as fitted from part_lines
      where ${inScope(sql`unit_id`, scope)} and role = 'fitted' group by unit_id, job_id) p using (unit_id, job_id)
    where ${ofUnits(sql`j.unit_id`, unitIds, scope)} and j.status = 'closed' order by j.completed_on desc, j.job_number desc`);
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
  /** Keys of the catalogue, which hold no comma; empty where a line names none and so is of the job's own. */
  fitted: string | null;
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
    fitted: row.fitted === null ? [] : row.fitted.split(",").flatMap((component) => component || (row.component ?? [])),
  };
}
