import { dirname } from "node:path";
import type { Day } from "@/lib/calendar/day";
import type { FileKind } from "@/lib/intake/file-kinds";
import { readOnly } from "../client";
import { loadIntakeSetting } from "../queries/intake-setting";
import { eitherColumns } from "./bulk/first-load";
import { stagePlain } from "./bulk/stage-plain";
import { fingerprint } from "./file-fingerprint";
import { findBatch } from "./find-batch";
import { stagedKindOf } from "./kinds/staged-kind-of";
import type { LoadMode, LoadResult, LoadWatch } from "./load-result";
import { noCompany } from "./no-company";
import { printWithPictures } from "./photos/print-with-pictures";
import { openSource, type Source } from "./staging/source-rows";
import { stageRows } from "./staging/stage-rows";
import type { StagedKind } from "./staging/staged-kind";
import { withStaging } from "./staging/staging-table";
import { storeImport } from "./store-import";

export interface LoadRequest extends LoadWatch {
  readonly path: string;
  /** As the sender calls it; never used to find a file. */
  readonly fileName: string;
  /** Left out, the file says itself what it is. */
  readonly kind?: FileKind | undefined;
  readonly mode: LoadMode;
  /** How many rows with problems the report names. */
  readonly problemLimit?: number;
  /** Nothing on record is later; the shop's own today where left out. */
  readonly today?: Day;
  readonly timeoutSeconds?: number;
}

/** Reads a file, checks every row, and adds it as one batch: whole or not at all. The same file twice changes nothing. */
export async function loadFile(request: LoadRequest): Promise<LoadResult> {
  const print = await fingerprint(request.path);
  if (print.bytes === 0)
    return {
      kind: "unreadable",
      problems: [{ problem: "The file is empty.", fix: "Choose the file that holds the rows." }],
    };
  const source = await openSource(request.path, request.kind);
  if (!source.ok) return { kind: "unreadable", problems: source.problems };
  const before = await readOnly((db) => findBatch(db, source.kind, print.sha256));
  try {
    return before ?? (await stageAndStore(request, source, stagedKindOf(source.kind), print));
  } finally {
    await source.close();
  }
}

async function stageAndStore(
  { path, fileName, mode, problemLimit = 200, today, timeoutSeconds = 3600, onProgress, signal }: LoadRequest,
  source: Source & { ok: true },
  kind: StagedKind,
  print: { readonly sha256: string; readonly bytes: number },
): Promise<LoadResult> {
  const setting = await readOnly((db) => loadIntakeSetting(db, today));
  if (!setting.shopKnown && needsShop(source.kind)) return noCompany;
  return await withStaging(async ({ create }) => {
    const table = await create(eitherColumns(kind));
    const stage = { kind, table, setting, folder: dirname(path), timeoutSeconds, onProgress, signal };
    const plain = { path, delimiter: ",", columns: [...source.present], bytes: print.bytes } as const; // a header in our own words has commas
    const bulk = await stagePlain(stage, plain);
    const staged = bulk ?? (await stageRows(stage, watchRows(source.rows, stage)));
    if (staged.problem !== undefined) return { kind: "unreadable", problems: [staged.problem] };
    if (staged.rows === 0)
      return {
        kind: "unreadable",
        problems: [{ problem: "The file has a header and no rows.", fix: "Choose the file that holds the rows." }],
      };
    const sha256 = source.kind === "photos" ? await printWithPictures(table, print.sha256) : print.sha256;
    return await storeImport(
      {
        kind: source.kind,
        parts: [
          {
            staged: {
              table,
              present: source.present,
              bare: bulk !== undefined,
              readCells: bulk?.readCells,
              either: true,
            },
            kind,
          },
        ],
        rows: undefined,
      },
      { fileName, sha256, bytes: print.bytes },
      { mode, problemLimit, timeoutSeconds, onProgress, signal },
    );
  });
}

/** Rows that take the currency, the grace or the time zone from the company. */
function needsShop(kind: FileKind): boolean {
  return kind !== "shop" && kind !== "components" && kind !== "policies";
}

const reportedEvery = 500;

async function* watchRows<Item>(rows: AsyncIterable<Item>, { onProgress, signal }: LoadWatch): AsyncGenerator<Item> {
  let done = 0;
  for await (const row of rows) {
    yield row;
    if (++done % reportedEvery !== 0) continue;
    signal?.throwIfAborted();
    onProgress?.(done, "reading");
  }
}
