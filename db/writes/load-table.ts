import { createHash } from "node:crypto";
import { dirname } from "node:path";
import type { Day } from "@/lib/calendar/day";
import { fileKinds } from "@/lib/intake/file-kinds";
import type { Matching } from "@/lib/intake/matching/matching";
import { translator } from "@/lib/intake/matching/translate-row";
import type { Translation } from "@/lib/intake/matching/translation";
import { readRows } from "@/lib/intake/tables/read-rows";
import type { SourceItem, SourceRow } from "@/lib/intake/tables/source-row";
import type { TableForm } from "@/lib/intake/tables/table-form";
import { readOnly } from "../client";
import { loadIntakeSetting } from "../queries/intake-setting";
import { loadKnownThings } from "../queries/known-things";
import { fingerprint } from "./file-fingerprint";
import { findBatch } from "./find-batch";
import { stagedKindOf } from "./kinds/staged-kind-of";
import type { LoadMode, LoadResult, LoadWatch } from "./load-result";
import { noCompany } from "./no-company";
import { type StagedTable, stageTable } from "./staging/stage-table";
import type { StagedFile } from "./staging/staged-file";
import { withStaging } from "./staging/staging-table";
import { filledColumns, tableHeaders } from "./staging/table-headers";
import { type ImportFile, type ImportSettings, storeImport } from "./store-import";

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
  return await loadRows(
    {
      ...request,
      file: { fileName, ...print, form, matching },
      translatorOf: (setting) => translator(matching, headerOf(matching), { ...setting, known }),
    },
    readRows(path, form),
  );
}

export interface RowsRequest extends LoadWatch {
  /** Where files lie that rows name. */
  readonly path?: string;
  readonly file: ImportFile & { readonly matching: Matching };
  readonly translatorOf: (setting: Awaited<ReturnType<typeof loadIntakeSetting>>) => (row: SourceRow) => Translation;
  readonly mode: LoadMode;
  readonly problemLimit?: number;
  readonly today?: Day;
  readonly timeoutSeconds?: number;
  readonly within?: ImportSettings["within"];
  /** Done with the staged rows before they are checked. */
  readonly prepare?: (staged: StagedTable) => Promise<void>;
}

/** Stages, checks and stores rows from anywhere that are read by a matching. */
export async function loadRows(request: RowsRequest, rows: AsyncIterable<SourceItem>): Promise<LoadResult> {
  const { file, mode, problemLimit = 200, today, timeoutSeconds = 3600, onProgress, signal, within } = request;
  const { matching } = file;
  const setting = await readOnly((db) => loadIntakeSetting(db, today));
  if (!setting.shopKnown) return noCompany;
  return await withStaging(async (staging) => {
    const headers = tableHeaders(matching);
    const staged = await stageTable(
      {
        staging,
        header: headerOf(matching),
        headers,
        translate: request.translatorOf(setting),
        setting,
        folder: dirname(request.path ?? ""),
        timeoutSeconds,
        onProgress,
        signal,
      },
      rows,
    );
    if (staged.problem !== undefined) return { kind: "unreadable", problems: [staged.problem] };
    if (staged.rows === 0)
      return {
        kind: "unreadable",
        problems: [{ problem: "The file has a header and no rows.", fix: "Choose the file that holds the rows." }],
      };
    return await storeImport(stagedFile(staged, matching, headers), file, {
      mode,
      problemLimit,
      timeoutSeconds,
      onProgress,
      signal,
      within,
    });
  });
}

function stagedFile(
  { table, parts }: StagedTable,
  matching: Matching,
  headers: Readonly<Record<string, string>>,
): StagedFile {
  const kinds = fileKinds.filter((kind) => (parts as ReadonlyMap<string, string>).has(kind)); // the map has table kinds only
  const beside = parts;
  return {
    kind: matching.kind,
    rows: { table, headers },
    parts: kinds.flatMap((kind) => {
      const part = (parts as ReadonlyMap<string, string>).get(kind);
      if (part === undefined) return [];
      return [
        {
          kind: stagedKindOf(kind),
          staged: { table: part, present: filledColumns(matching, kind), beside, rows: table },
        },
      ];
    }),
  };
}

function headerOf({ columns }: Matching): readonly string[] {
  return columns.map(({ source }) => source);
}

/** One fingerprint for rows that came without a file. */
export function fingerprintOf(text: string): { sha256: string; bytes: number } {
  return { sha256: createHash("sha256").update(text).digest("hex"), bytes: Buffer.byteLength(text) };
}
