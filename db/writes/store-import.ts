import type { Matching } from "@/lib/intake/matching/matching";
import type { TableForm } from "@/lib/intake/tables/table-form";
import type { Transaction } from "../database-types";
import { inTransaction } from "../in-transaction";
import { batches } from "../schema/intake";
import { beginFilling, type Filling } from "./bulk/filling";
import { Lanes } from "./bulk/lanes";
import { removeFilled } from "./bulk/remove-filled";
import { type CountsAround, countsAround } from "./counts-around";
import { findBatch } from "./find-batch";
import type { LoadMode, LoadReport, LoadResult, LoadWatch } from "./load-result";
import { type FollowUp, markMended } from "./mending/mark-mended";
import { markStagedUnits, settleUnclaimed } from "./money/units-to-judge";
import { markStagedParts } from "./parts/mark-parts";
import { settleOutlooks } from "./parts/settle-outlooks";
import { refreshCounts } from "./refresh-counts";
import { checkStaged } from "./staging/check-staged";
import { keepAside, keepNotes } from "./staging/keep-aside";
import { loadReport, rowTable } from "./staging/load-report";
import { mergeStaged } from "./staging/merge-staged";
import { rowsOf, run } from "./staging/run";
import type { StagedFile, StagedPart } from "./staging/staged-file";

export interface ImportFile {
  readonly fileName: string;
  readonly sha256: string;
  readonly bytes: number;
  /** Of somebody's own file: how it was read. */
  readonly form?: TableForm | undefined;
  readonly matching?: Matching | undefined;
  /** The load whose held rows these are, mended. */
  readonly parentBatch?: number | undefined;
}

export interface ImportSettings extends LoadWatch {
  readonly mode: LoadMode;
  readonly problemLimit: number;
  readonly timeoutSeconds: number;
  /** The rows were held with another load, and are mended now. Those that are still wrong stay with that load. */
  readonly followUp?: FollowUp | undefined;
  /** Done with the load in one transaction, whatever came of it: both are stored, or neither. */
  readonly within?: ((tx: Transaction, result: LoadResult) => Promise<void>) | undefined;
}

/** Any number will do as long as it never changes. Changes of the register take turns: each must see what the last one stored. */
export const intakeLock = 7_016_020_002;

/**
 * Checks staged rows against each other and against what is stored and, unless it is a dry run, merges them: all in
 * one transaction, together with what it takes to take them back and with the counts.
 */
export async function storeImport(staged: StagedFile, file: ImportFile, settings: ImportSettings): Promise<LoadResult> {
  const lanes = new Lanes(settings);
  const done = await inTransaction(
    async (tx) => {
      const result = await checkAndMerge(tx, staged, file, { ...settings, lanes });
      await settings.within?.(tx, result);
      return result;
    },
    { timeoutSeconds: settings.timeoutSeconds },
  ).catch(async (error) => {
    await lanes.end();
    await inTransaction(removeFilled).catch(() => {}); // else the next load does it
    throw error;
  });
  await lanes.end();
  if (done.kind === "added") {
    await settleUnclaimed();
    await settleOutlooks();
  }
  return done;
}

async function checkAndMerge(
  tx: Transaction,
  given: StagedFile,
  file: ImportFile,
  { mode, problemLimit, followUp, onProgress, signal, lanes }: ImportSettings & { readonly lanes: Lanes },
): Promise<LoadResult> {
  await run(tx, `set local work_mem = '64MB'`);
  if (mode !== "dry run") await run(tx, `select pg_advisory_xact_lock(${intakeLock})`);
  const before = await findBatch(tx, given.kind, file.sha256);
  if (before !== undefined) return before;
  onProgress?.(0, "checking");
  const staged = await checkStaged(tx, given, lanes, () => signal?.throwIfAborted());
  const report = await loadReport(tx, staged, problemLimit);
  if (mode === "dry run") return { kind: "checked", report };
  if (mode === "add" && report.rowsHeld > 0) return { kind: "refused", report };
  signal?.throwIfAborted();
  onProgress?.(report.rowsTotal, "adding");
  const filling = await beginFilling(tx, staged, followUp === undefined ? report.rowsNew : 0, lanes);
  if (followUp === undefined) {
    const batchId = await merge(tx, staged, { file, counted: report }, { onProgress, signal, filling });
    await keepAside(tx, staged, batchId, report.rowsHeld + report.rowsRefused);
    await filling.finish();
    return { kind: "added", batchId, report };
  }
  const taken = report.rowsNew + report.rowsChanged + report.rowsSame;
  const counted = { ...report, rowsTotal: taken, rowsHeld: 0, rowsRefused: 0 };
  const batchId = taken === 0 ? undefined : await merge(tx, staged, { file, counted }, { onProgress, signal, filling });
  await markMended(tx, followUp, { table: rowTable(staged), batchId });
  if (batchId === undefined) return { kind: "refused", report };
  await keepNotes(tx, staged, batchId);
  return { kind: "added", batchId, report };
}

async function merge(
  tx: Transaction,
  staged: StagedFile,
  { file, counted }: { readonly file: ImportFile; readonly counted: LoadReport },
  { onProgress, signal, filling }: LoadWatch & { readonly filling: Filling },
): Promise<number> {
  const batchId = await storeBatch(tx, file, counted);
  const counts = await countsOfParts(tx, staged.parts);
  await markStagedParts(tx, staged.parts, counted.rowsTotal);
  for (const { staged: rows, kind } of staged.parts) {
    await mergeStaged(tx, { ...rows, filling }, kind, batchId);
    signal?.throwIfAborted();
  }
  await filling.ready();
  onProgress?.(counted.rowsTotal, "counting");
  await counts?.refresh(filling.insert);
  await markStagedUnits(tx, staged.parts);
  await markStagedParts(tx, staged.parts, counted.rowsTotal);
  return batchId;
}

async function storeBatch(tx: Transaction, file: ImportFile, report: LoadReport): Promise<number> {
  const { fileKind, rowsTotal, rowsNew, rowsChanged, rowsSame, rowsHeld, rowsRefused } = report;
  const stored = await tx
    .insert(batches)
    .values({
      kind: fileKind,
      fileName: file.fileName,
      fileSha256: file.sha256,
      fileBytes: file.bytes,
      state: "added",
      rowsTotal,
      rowsNew,
      rowsChanged,
      rowsSame,
      rowsHeld,
      rowsRefused,
      form: file.form ?? null,
      matching: file.matching ?? null,
      parentBatch: file.parentBatch ?? null,
      addedAt: new Date().toISOString(),
    })
    .returning({ batchId: batches.batchId });
  const [{ batchId } = { batchId: undefined }] = stored;
  if (batchId === undefined) throw new Error("The batch was stored without a number.");
  return batchId;
}

/** To be asked before the rows are merged. @returns undefined where they change no counts */
async function countsOfParts(tx: Transaction, parts: readonly StagedPart[]): Promise<CountsAround | undefined> {
  if (parts.some(({ kind }) => kind.recounts === "all"))
    return { refresh: (insert) => refreshCounts(tx, "all", insert) };
  const counted = parts.filter(({ kind }) => kind.recounts === "staged units");
  if (counted.length === 0) return undefined;
  const firsts = counted.flatMap(({ staged, kind }) =>
    staged.agreed === true && kind.first ? [{ staged, first: kind.first }] : [],
  );
  if (firsts.length < counted.length) return await countsAround(tx, counted.map(touchedUnits).join(" union all "));
  return {
    refresh: async (insert) => {
      const models: number[] = [];
      for (const { staged, first } of firsts)
        models.push(...(await rowsOf<{ id: number }>(tx, first.models(staged))).map(({ id }) => id));
      await refreshCounts(tx, models, insert);
    },
  };
}

/** A job can change its unit in the merge. */
function touchedUnits({ staged, kind }: StagedPart): string {
  const columns = ["unit_id", ...(kind.derived.includes("joins_from bigint") ? ["joins_from"] : [])];
  return columns
    .map((column) => `select ${column} from ${staged.table} where fate in ('new', 'changed')`)
    .join(" union all ");
}
