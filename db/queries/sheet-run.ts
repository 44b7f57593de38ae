import { sql } from "drizzle-orm";
import type { Sheet } from "@/lib/sheets/sheet";
import type { SheetBasis } from "@/lib/sheets/sheet-basis";
import type { Reader } from "../database-types";

export interface StoredRun {
  readonly versions: Readonly<Record<string, number>>;
  readonly sheets: readonly Sheet[];
  readonly basis: SheetBasis | undefined;
}

/** The sheets that a job was begun by, as they stood then; undefined where its sheet was never opened. */
export async function loadSheetRun(db: Reader, { unitId, jobId }: RunKey): Promise<StoredRun | undefined> {
  const [row] = await db.rows<{
    versions: Readonly<Record<string, number>>;
    sheets: readonly Sheet[];
    basis: SheetBasis | null;
  }>(sql`select versions, sheets, basis from sheet_runs where unit_id = ${unitId} and job_id = ${jobId}`);
  if (row === undefined) return undefined;
  // JSON leaves out what is undefined, and runs of before had fewer fields.
  const sheets = row.sheets.map((sheet) => ({
    ...sheet,
    steps: sheet.steps.map((step) => ({
      ...step,
      own: step.own ?? undefined,
      photo: step.photo ?? undefined,
      cautions: step.cautions ?? [],
      after: step.after ?? undefined,
    })),
  }));
  return { versions: row.versions, sheets, basis: row.basis ?? undefined };
}

interface RunKey {
  readonly unitId: string;
  readonly jobId: string;
}
