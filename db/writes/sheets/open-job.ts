import { sql } from "drizzle-orm";
import type { Day } from "@/lib/calendar/day";
import type { PayerKind } from "@/lib/domain/job";
import { inTransaction } from "../../in-transaction";
import { run } from "../staging/run";
import { intakeLock } from "../store-import";

export interface NewOpenJob {
  readonly jobNumber: string;
  readonly serial: string;
  readonly symptom: string;
  readonly complaint: string;
  readonly requestedOn: Day;
  readonly technician: string | undefined;
  readonly payer: PayerKind;
  /** Number of the earlier job on this unit that it returns to. */
  readonly callbackOf: string | undefined;
}

export type OpenedJob =
  | { readonly kind: "opened" }
  | { readonly kind: "number is taken" }
  | { readonly kind: "no such serial" }
  /** Several makers have this serial: which is meant must be said by the number of the unit. */
  | { readonly kind: "several units"; readonly makers: readonly string[] }
  | { readonly kind: "no such symptom" }
  | { readonly kind: "no such earlier job" };

/** Opens a job on a unit that is on file. Nothing is counted until it is closed. */
export async function openJob(job: NewOpenJob): Promise<OpenedJob> {
  if (job.jobNumber.trim() === "") throw new RangeError("jobNumber: is blank");
  return await inTransaction(async (tx) => {
    await run(tx, `select pg_advisory_xact_lock(${intakeLock})`);
    const taken = await tx.rows(sql`
      select 1 from jobs where job_number = ${job.jobNumber} union all select 1 from open_jobs where job_number = ${job.jobNumber}`);
    if (taken.length > 0) return { kind: "number is taken" };
    const units = await tx.rows<{ unitId: string; maker: string; fits: boolean }>(sql`
      select u.unit_id::text as "unitId", k.name as maker,
        exists (select from symptom_uses s where s.symptom = ${job.symptom} and s.product_type = m.product_type) as fits
      from units u join models m using (model_id) join makers k on k.maker_id = u.maker_id
      where u.serial_normalised = regexp_replace(upper(${job.serial}), '[^A-Z0-9]', '', 'g')`);
    const [unit] = units;
    if (unit === undefined) return { kind: "no such serial" };
    if (units.length > 1) return { kind: "several units", makers: units.map(({ maker }) => maker) };
    if (!unit.fits) return { kind: "no such symptom" };
    if (job.callbackOf !== undefined) {
      const earlier = await tx.rows(
        sql`select 1 from jobs where unit_id = ${unit.unitId} and job_number = ${job.callbackOf}`,
      );
      if (earlier.length === 0) return { kind: "no such earlier job" };
    }
    await tx.execute(sql`
      insert into open_jobs (unit_id, job_id, job_number, requested_on, complaint, symptom, technician, payer, callback_of, opened_at)
      values (${unit.unitId}, hashtextextended(${job.jobNumber}, 0) & 9223372036854775807, ${job.jobNumber}, ${job.requestedOn},
        ${job.complaint}, ${job.symptom}, ${job.technician ?? null}, ${job.payer}, ${job.callbackOf ?? null}, now())`);
    return { kind: "opened" };
  });
}
