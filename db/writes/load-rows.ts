import { dirname } from "node:path";
import type { Day } from "@/lib/calendar/day";
import { type FileKind, fileKinds, isTableKind } from "@/lib/intake/file-kinds";
import type { IntakeSetting } from "@/lib/intake/intake-setting";
import type { Translation } from "@/lib/intake/matching/translation";
import type { SourceItem, SourceRow } from "@/lib/intake/tables/source-row";
import { readOnly } from "../client";
import { loadIntakeSetting } from "../queries/intake-setting";
import { stagedKindOf } from "./kinds/staged-kind-of";
import type { LoadMode, LoadResult, LoadWatch } from "./load-result";
import { noCompany } from "./no-company";
import { rowFiller } from "./staging/fill-rows";
import { type StagedTable, stageTable } from "./staging/stage-table";
import type { StagedFile } from "./staging/staged-file";
import type { StagedRows } from "./staging/staged-kind";
import { withStaging } from "./staging/staging-table";
import { type ImportFile, type ImportSettings, storeImport } from "./store-import";

export interface RowsRequest extends LoadWatch {
  readonly kind: FileKind;
  /** Names of the columns of the rows, in their order. */
  readonly header: readonly string[];
  /** By kind and column of ours (`jobs.serial`): what the column is called there. */
  readonly headers: Readonly<Record<string, string>>;
  /** Columns of a kind that the rows fill; others leave stored values alone. */
  readonly presentOf: (kind: FileKind) => ReadonlySet<string>;
  /** Where rows differ in their columns, what a row lacks leaves stored values alone too. */
  readonly sparse?: boolean;
  readonly translatorOf: (setting: IntakeSetting) => (row: SourceRow) => Translation;
  readonly file: ImportFile;
  readonly mode: LoadMode;
  /** Where files lie that rows name. */
  readonly path?: string;
  readonly problemLimit?: number;
  readonly today?: Day;
  readonly timeoutSeconds?: number;
  readonly within?: ImportSettings["within"];
  readonly followUp?: ImportSettings["followUp"];
}

/**
 * Stages, checks and stores rows from anywhere, each of which is translated into records of ours.
 * @param readRows  gives the same rows each time
 */
export async function loadRows(request: RowsRequest, readRows: () => AsyncIterable<SourceItem>): Promise<LoadResult> {
  const { file, header, headers, mode, problemLimit = 200, today, timeoutSeconds = 3600 } = request;
  const { onProgress, signal, within, followUp, sparse = false } = request;
  const setting = await readOnly((db) => loadIntakeSetting(db, today));
  if (!setting.shopKnown) return noCompany;
  return await withStaging(async (staging) => {
    const translate = request.translatorOf(setting);
    const folder = dirname(request.path ?? "");
    const staged = await stageTable(
      {
        ...{ staging, main: request.kind, header, headers, sparse, translate, setting, folder },
        ...{ timeoutSeconds, onProgress, signal },
      },
      readRows(),
    );
    if (staged.problem !== undefined) return { kind: "unreadable", problems: [staged.problem] };
    if (staged.rows === 0) return noRows;
    return await storeImport(stagedFile(staged, request, readRows), file, {
      mode,
      problemLimit,
      timeoutSeconds,
      onProgress,
      signal,
      within,
      followUp,
    });
  });
}

const noRows: LoadResult = {
  kind: "unreadable",
  problems: [{ problem: "The file has a header and no rows.", fix: "Choose the file that holds the rows." }],
};

function stagedFile(
  { table, parts: beside }: StagedTable,
  { kind: main, header, headers, presentOf, sparse = false }: RowsRequest,
  readAgain: () => AsyncIterable<SourceItem>,
): StagedFile {
  const rows: StagedRows = { table, headers, fill: rowFiller(table, header, readAgain) };
  const parts = fileKinds.flatMap((kind) => {
    const part = isTableKind(kind) ? beside.get(kind) : undefined;
    if (part === undefined) return [];
    const staged = { table: part, present: presentOf(kind), beside, rows, sparse, bare: !sparse };
    return [{ kind: stagedKindOf(kind), staged }];
  });
  return { kind: main, rows, parts };
}
