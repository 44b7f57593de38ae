import { todayIn } from "@/app/_clock/today";
import type { SheetView } from "@/app/sheet/_flow/sheet-view";
import { readOnly } from "@/db/client";
import type { Reader } from "@/db/database-types";
import { loadExpectedRanges } from "@/db/queries/expected-ranges";
import { loadSheetJob, type SheetJob } from "@/db/queries/sheet-job";
import { loadFaultCodes } from "@/db/queries/sheet-lists";
import { loadSheetRun } from "@/db/queries/sheet-run";
import { loadSymptomCells } from "@/db/queries/sheet-symptom";
import { loadSheets } from "@/db/queries/sheet-versions";
import { loadShop } from "@/db/queries/shop";
import { loadNotesOfUnit } from "@/db/queries/technician-notes";
import { type SheetRun, startRun } from "@/db/writes/sheets/start-run";
import { daysBetween } from "@/lib/calendar/day";
import { ageBandOf, sheetBasis } from "@/lib/sheets/sheet-basis";
import { componentsBehind } from "@/lib/sheets/visit-plan";

export type FoundSheet =
  | { readonly kind: "none" }
  | { readonly kind: "closed"; readonly jobNumber: string }
  | { readonly kind: "open"; readonly view: Omit<SheetView, "person"> };

/** The sheet of an open job. The first time it is opened its versions and its basis are noted with the job, and hold from then on. */
export async function loadSheetView(jobNumber: string): Promise<FoundSheet> {
  const found = await readOnly(async (db) => {
    const job = await loadSheetJob(db, jobNumber);
    if (job === undefined || job.isClosed) return job;
    const stored = await loadSheetRun(db, job);
    return {
      job,
      isNew: stored === undefined,
      run: stored ?? (await freshRun(db, job)),
      ranges: await loadExpectedRanges(db, job.modelId),
      codes: await loadFaultCodes(db, job.unit.maker),
      notes: (await loadNotesOfUnit(db, job.unitId)).map(({ words }) => words),
      ...ofShop(await loadShop(db)),
    };
  });
  if (found === undefined) return { kind: "none" };
  if (!("run" in found)) return { kind: "closed", jobNumber };
  const { job, isNew, run, ...rest } = found;
  if (isNew) await startRun(jobNumber, run);
  const { requestedOn, symptom, technician, callbackOf, unit, answers, photos, earlier } = job;
  const shown = { jobNumber, requestedOn, symptom, technician, callbackOf, unit, answers, photos, earlier };
  return { kind: "open", view: { ...shown, ...rest, sheets: run.sheets, basis: run.basis } };
}

function ofShop({ timeZone, repeatDays }: Awaited<ReturnType<typeof loadShop>>) {
  return { today: todayIn(timeZone), repeatDays };
}

async function freshRun(db: Reader, job: SheetJob): Promise<SheetRun> {
  const { productType } = job.unit;
  const sheets = await loadSheets(db, productType);
  const behind = new Set(componentsBehind(productType, job.symptom, sheets));
  const cells = await loadSymptomCells(db, { symptom: job.symptom, productType });
  const age = job.inServiceOn === undefined ? undefined : daysBetween(job.inServiceOn, job.requestedOn);
  return {
    sheets: sheets.filter(({ component }) => behind.has(component)),
    basis: sheetBasis(cells, { modelId: job.modelId, ageBand: ageBandOf(age) }),
  };
}
