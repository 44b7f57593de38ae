import type { RowProblem } from "@/lib/intake/parsed";
import type { Transaction } from "../database-types";
import { inTransaction } from "../in-transaction";
import { batches } from "../schema/intake";
import { findBatch } from "./find-batch";
import type { LoadMode, LoadReport, LoadResult } from "./load-result";
import { refreshCounts } from "./refresh-counts";
import { flagRepeats } from "./staging/flag-rows";
import { mergeStaged } from "./staging/merge-staged";
import { rowsOf, run } from "./staging/run";
import { settleFates } from "./staging/settle-fates";
import type { Staged, StagedKind } from "./staging/staged-kind";

export interface ImportFile {
  readonly fileName: string;
  readonly sha256: string;
  readonly bytes: number;
}

interface ImportSettings {
  readonly mode: LoadMode;
  readonly problemLimit: number;
  readonly timeoutSeconds: number;
}

/** Any number will do as long as it never changes. Changes of the register take turns: each must see what the last one stored. */
export const intakeLock = 7_016_020_002;

/**
 * Checks staged rows against each other and against what is stored and, unless it is a dry run, merges them: all in
 * one transaction, together with what it takes to take them back and with the counts.
 */
export async function storeImport(
  staged: Staged,
  kind: StagedKind,
  file: ImportFile,
  settings: ImportSettings,
): Promise<LoadResult> {
  const { mode, problemLimit, timeoutSeconds } = settings;
  return await inTransaction(
    async (tx) => {
      await run(tx, `set local work_mem = '64MB'`);
      if (mode !== "dry run") await run(tx, `select pg_advisory_xact_lock(${intakeLock})`);
      const before = await findBatch(tx, kind.kind, file.sha256);
      if (before !== undefined) return before;
      const report = await checkStaged(tx, staged, kind, problemLimit);
      if (mode === "dry run") return { kind: "checked", report };
      if (mode === "add" && report.rowsHeld > 0) return { kind: "refused", report };
      return { kind: "added", batchId: await merge(tx, staged, kind, { file, report }), report };
    },
    { timeoutSeconds },
  );
}

async function checkStaged(
  tx: Transaction,
  staged: Staged,
  kind: StagedKind,
  problemLimit: number,
): Promise<LoadReport> {
  await run(tx, `analyze ${staged.table}`); // without it the joins below are planned for an empty table
  await kind.resolve(tx, staged);
  await flagRepeats(tx, staged, kind);
  await kind.check(tx, staged);
  await settleFates(tx, staged, kind);
  return {
    fileKind: kind.kind,
    ...(await countFates(tx, staged)),
    problems: await firstProblems(tx, staged, problemLimit),
  };
}

async function countFates(tx: Transaction, { table }: Staged) {
  const [counted] = await rowsOf<Record<"total" | "new" | "changed" | "same" | "held", number>>(
    tx,
    `select count(*)::integer as total, count(*) filter (where fate = 'new')::integer as new, count(*) filter (where fate = 'changed')::integer as changed,
            count(*) filter (where fate = 'same')::integer as same, count(*) filter (where problems is not null)::integer as held from ${table}`,
  );
  if (counted === undefined) throw new Error("A count gave no row.");
  return {
    rowsTotal: counted.total,
    rowsNew: counted.new,
    rowsChanged: counted.changed,
    rowsSame: counted.same,
    rowsHeld: counted.held,
  };
}

async function firstProblems(tx: Transaction, { table }: Staged, limit: number): Promise<readonly RowProblem[]> {
  const held = await rowsOf<{ row: number; problems: Omit<RowProblem, "row">[] }>(
    tx,
    `select row, problems from ${table} where problems is not null order by row limit ${limit}`,
  );
  return held.flatMap(({ row, problems }) => problems.map((problem) => ({ row, ...problem })));
}

async function merge(
  tx: Transaction,
  staged: Staged,
  kind: StagedKind,
  { file, report }: { file: ImportFile; report: LoadReport },
): Promise<number> {
  const batchId = await storeBatch(tx, file, report);
  await run(
    tx,
    `insert into held_rows (batch_id, row, cells, problems) select ${batchId}, row, cells, problems from ${staged.table} where problems is not null`,
  );
  const before = await touchedModels(tx, staged, kind);
  await mergeStaged(tx, staged, kind, batchId);
  if (kind.recounts === "all") await refreshCounts(tx, "all");
  else await refreshCounts(tx, [...before, ...(await touchedModels(tx, staged, kind))]);
  return batchId;
}

async function storeBatch(
  tx: Transaction,
  file: ImportFile,
  { fileKind, problems: _, ...rows }: LoadReport,
): Promise<number> {
  const stored = await tx
    .insert(batches)
    .values({
      kind: fileKind,
      fileName: file.fileName,
      fileSha256: file.sha256,
      fileBytes: file.bytes,
      state: "added",
      ...rows,
      addedAt: new Date().toISOString(),
    })
    .returning({ batchId: batches.batchId });
  const [{ batchId } = { batchId: undefined }] = stored;
  if (batchId === undefined) throw new Error("The batch was stored without a number.");
  return batchId;
}

/** A unit can change its model in the merge, so this is asked before and after. */
async function touchedModels(tx: Transaction, { table }: Staged, { recounts }: StagedKind): Promise<readonly number[]> {
  if (recounts !== "staged units") return [];
  const models = await rowsOf<{ id: number }>(
    tx,
    `select distinct u.model_id as id from ${table} s join units u using (unit_id) where s.fate in ('new', 'changed')`,
  );
  return models.map(({ id }) => id);
}
