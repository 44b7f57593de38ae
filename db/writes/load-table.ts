import type { Day } from "@/lib/calendar/day";
import type { FileKind } from "@/lib/intake/file-kinds";
import type { Matching } from "@/lib/intake/matching/matching";
import { translator } from "@/lib/intake/matching/translate-row";
import { readRows } from "@/lib/intake/tables/read-rows";
import type { TableForm } from "@/lib/intake/tables/table-form";
import { readOnly } from "../client";
import { loadKnownThings } from "../queries/known-things";
import { fingerprint } from "./file-fingerprint";
import { findBatch } from "./find-batch";
import type { LoadMode, LoadResult, LoadWatch } from "./load-result";
import { loadRows } from "./load-rows";
import { filledColumns, tableHeaders } from "./staging/table-headers";

export interface LoadTableRequest extends LoadWatch {
  readonly path: string;
  /** As the sender calls it; never used to find a file. */
  readonly fileName: string;
  readonly form: TableForm;
  readonly matching: Matching;
  readonly mode: LoadMode;
  /** How many rows with problems the report names. */
  readonly problemLimit?: number;
  /** Nothing on record is later; the shop's own today where left out. */
  readonly today?: Day;
  readonly timeoutSeconds?: number;
}

/**
 * Loads somebody's own file by its matching: one batch, one transaction, whatever kinds of records its rows hold.
 * Each row of the file has one fate. The same rows in another form or order change nothing.
 * @throws what the signal was aborted with; nothing of the load stays
 */
export async function loadTable(request: LoadTableRequest): Promise<LoadResult> {
  const { path, fileName, form, matching } = request;
  const print = await fingerprint(path);
  const before = await readOnly((db) => findBatch(db, matching.kind, print.sha256));
  if (before !== undefined) return before;
  const known = await readOnly(loadKnownThings, { timeoutSeconds: 60 });
  const header = matching.columns.map(({ source }) => source);
  return await loadRows(
    {
      ...request,
      file: { fileName, ...print, form, matching },
      ...matchedRows(matching),
      translatorOf: (setting) => translator(matching, header, { ...setting, known }),
    },
    () => readRows(path, form),
  );
}

/** How rows that are read by a matching are told, and which columns of ours they fill. */
export function matchedRows(matching: Matching) {
  return {
    kind: matching.kind,
    header: matching.columns.map(({ source }) => source),
    headers: tableHeaders(matching),
    presentOf: (kind: FileKind) => filledColumns(matching, kind),
  };
}
