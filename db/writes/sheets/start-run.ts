import { sql } from "drizzle-orm";
import { type Sheet, sheetKey } from "@/lib/sheets/sheet";
import type { SheetBasis } from "@/lib/sheets/sheet-basis";
import { inTransaction } from "../../in-transaction";
import { lockedJob } from "./locked-job";

/** What a visit is worked by, as it stood when it was begun. */
export interface SheetRun {
  readonly sheets: readonly Sheet[];
  readonly basis: SheetBasis | undefined;
}

/** Notes the versions that the job is worked by, the first time its sheet is opened; later times give what was noted. */
export async function startRun(jobNumber: string, run: SheetRun): Promise<void> {
  const versions = Object.fromEntries(run.sheets.map((sheet) => [sheetKey(sheet), sheet.version]));
  await inTransaction(async (tx) => {
    const job = await lockedJob(tx, jobNumber);
    if (job?.state !== "open") return;
    await tx.execute(sql`
      insert into sheet_runs (unit_id, job_id, versions, sheets, basis, started_at)
      values (${job.unitId}, ${job.jobId}, ${JSON.stringify(versions)}::jsonb, ${JSON.stringify(run.sheets)}::jsonb, ${JSON.stringify(run.basis ?? null)}::jsonb, now())
      on conflict do nothing`);
  });
}
