// A large first file in our own columns goes straight into its tables: this program makes the keys, and asks what rows
// must be asked together, while the database takes them in; nothing is staged. Where any row must be looked at beside
// another, or beside what is on file, all of it is undone and the ordinary way takes the file from the start.
import type { Transaction } from "@/db/database-types";
import { inTransaction } from "@/db/in-transaction";
import type { RowProblem } from "@/lib/intake/parsed";
import { findBatch } from "../../find-batch";
import type { LoadReport, LoadResult } from "../../load-result";
import { markStagedUnits } from "../../money/units-to-judge";
import { markStagedParts } from "../../parts/mark-parts";
import { refreshCounts } from "../../refresh-counts";
import { rowsOf, run } from "../../staging/run";
import type { Stage } from "../../staging/stage-rows";
import { afterStoring, type ImportFile, type ImportSettings, intakeLock, storeBatch } from "../../store-import";
import { beginFilling } from "../filling";
import { NotPlain } from "../record-scanner";
import type { PlainFile } from "../stage-plain";
import { keepAsideRows } from "./keep-aside-rows";
import { knowsHash } from "./key-hash";
import { NotStraight } from "./not-straight";
import { straightKind } from "./straight-kind";
import { StraightReader } from "./straight-reader";

export interface StraightLoad {
  readonly stage: Omit<Stage, "table">;
  readonly file: PlainFile;
  readonly given: ImportFile;
  readonly settings: ImportSettings;
}

/** Not an error: what came of it is known, and nothing of it is to be stored. */
class Undone extends Error {
  readonly result: LoadResult;
  constructor(result: LoadResult) {
    super("undone");
    this.result = result;
  }
}

/** @returns undefined where the ordinary way must take the file; nothing is stored then */
export async function loadStraight(load: StraightLoad): Promise<LoadResult | undefined> {
  const { settings } = load;
  if (settings.mode === "dry run") return undefined;
  try {
    const result = await inTransaction((tx) => takeIn(tx, load), { timeoutSeconds: settings.timeoutSeconds });
    if (result.kind === "added") await afterStoring();
    return result;
  } catch (error) {
    if (error instanceof Undone) return error.result;
    if (error instanceof NotStraight || error instanceof NotPlain) return undefined;
    throw error;
  }
}

async function takeIn(
  tx: Transaction,
  { stage, file, given, settings: { mode, problemLimit, onProgress, signal } }: StraightLoad,
): Promise<LoadResult> {
  const { kind } = stage;
  await run(tx, `set local work_mem = '64MB'; select pg_advisory_xact_lock(${intakeLock})`);
  const before = await findBatch(tx, kind.kind, given.sha256);
  if (before !== undefined) return before;
  const straight = await straightKind(tx, stage, file);
  if (straight === undefined || !(await knowsHash(tx))) throw new NotStraight("another kind or another database");
  const filling = await beginFilling(tx, kind.kind);
  if (!filling.tables.includes(kind.target.table)) throw new NotStraight("a table that holds something");
  const [numbered] = await rowsOf<{ id: string }>(
    tx,
    `select nextval(pg_get_serial_sequence('public.batches', 'batch_id')) as id`,
  );
  const batchId = Number(numbered?.id);
  const gatherer = await straight.gatherer();
  const reader = new StraightReader({ ...stage, table: "", onProgress, signal }, file, { gatherer, batchId });
  const columns = [...straight.keys, ...kind.columns.filter(({ use }) => use !== "help").map(({ name }) => name)];
  await tx.copy(
    `copy ${kind.target.table} (${columns.join(", ")}, batch_id) from stdin (format binary)`,
    reader.chunks(),
  );
  const report = reportOf(reader, stage, problemLimit);
  if (report.rowsTotal === 0) throw new NotStraight("a file without rows");
  onProgress?.(report.rowsTotal, "checking");
  await straight.agree();
  if (mode === "add" && report.rowsHeld > 0) throw new Undone({ kind: "refused", report });
  signal?.throwIfAborted();
  onProgress?.(report.rowsTotal, "adding");
  await storeBatch(tx, given, report, batchId);
  const parts = [{ kind, staged: { table: straight.table, present: new Set(file.columns), agreed: true } }];
  await markStagedParts(tx, parts, report.rowsTotal);
  await straight.store(batchId, filling.tables);
  await keepAsideRows(tx, batchId, reader.aside);
  signal?.throwIfAborted();
  await filling.ready();
  onProgress?.(report.rowsTotal, "counting");
  const models = await rowsOf<{ id: number }>(tx, straight.models);
  await refreshCounts(
    tx,
    models.map(({ id }) => id),
  );
  await markStagedUnits(tx, parts);
  await filling.finish();
  return { kind: "added", batchId, report };
}

function reportOf({ rows, aside }: StraightReader, { kind }: Omit<Stage, "table">, limit: number): LoadReport {
  const inOrder = aside.toSorted((a, b) => a.row - b.row).slice(0, limit);
  return {
    fileKind: kind.kind,
    rowsTotal: rows,
    rowsNew: rows - aside.length,
    rowsChanged: 0,
    rowsSame: 0,
    rowsHeld: aside.length,
    rowsRefused: 0,
    problems: inOrder.flatMap(({ row, problems }) => problems.map((problem): RowProblem => ({ row, ...problem }))),
    refused: [],
    changes: [],
    keptEdits: [],
    offers: [],
  };
}
