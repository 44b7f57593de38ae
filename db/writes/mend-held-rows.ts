import { createHash } from "node:crypto";
import type { Day } from "@/lib/calendar/day";
import { isFileKind, isTableKind, type TableKind } from "@/lib/intake/file-kinds";
import { translator } from "@/lib/intake/matching/translate-row";
import { readOnly } from "../client";
import type { BatchRow } from "../queries/batches";
import { loadBatchRow } from "../queries/batches";
import { loadKnownThings } from "../queries/known-things";
import type { LoadResult } from "./load-result";
import { loadRows, type RowsRequest } from "./load-rows";
import { matchedRows } from "./load-table";
import { asItems, correctedSources, type HeldChange } from "./mending/corrected-sources";
import { type HeldSource, loadHeldSources } from "./mending/held-sources";
import { ourColumns } from "./mending/our-columns";
import { ownTranslator } from "./mending/own-translator";

export interface MendRequest {
  readonly batchId: number;
  /** What to write instead; none tries the held rows again as they are, for example after a model became known. */
  readonly changes: readonly HeldChange[];
  readonly mode: "dry run" | "add";
  readonly problemLimit?: number;
  readonly today?: Day;
}

export type MendResult =
  | { readonly kind: "no such load" }
  | { readonly kind: "taken back" }
  /** None of its rows waits, or the changes name none that does. */
  | { readonly kind: "nothing held" }
  | LoadResult;

/**
 * Corrects held rows of a load and takes in those that are right then, as a load of their own that follows the first.
 * A row that still has problems keeps its corrections and waits on.
 */
export async function mendHeldRows(request: MendRequest): Promise<MendResult> {
  const batch = await readOnly((db) => loadBatchRow(db, request.batchId));
  if (batch === undefined) return { kind: "no such load" };
  if (batch.state === "taken_back") return { kind: "taken back" };
  const held = await readOnly((db) => loadHeldSources(db, request.batchId));
  const mended = correctedSources(held, request.changes);
  if (mended.length === 0) return { kind: "nothing held" };
  const rows = await rowsRequest(batch, mended);
  const { mode, problemLimit = 200, today } = request;
  return await loadRows(
    {
      ...rows,
      sparse: true,
      mode: mode === "add" ? "add and set aside" : "dry run",
      problemLimit,
      ...(today === undefined ? {} : { today }),
      followUp: { parent: batch.batchId, rows: mended.map(({ row, corrections }) => ({ row, corrections })) },
    },
    () => asItems(mended, rows.header),
  );
}

/** Rows go the way they went before: by the load's matching, or as rows of our own columns. */
async function rowsRequest(batch: BatchRow, mended: readonly HeldSource[]): Promise<Omit<RowsRequest, "mode">> {
  const text = JSON.stringify([
    batch.fileSha256,
    mended.map(({ row, cells, corrections }) => [row, cells, corrections]),
  ]);
  const file = {
    fileName: batch.fileName,
    sha256: createHash("sha256").update(text).digest("hex"),
    bytes: Buffer.byteLength(text),
    form: batch.form ?? undefined,
    matching: batch.matching ?? undefined,
    parentBatch: batch.batchId,
  };
  const { matching } = batch;
  if (matching === null) {
    const kind = tableKindOf(batch.kind);
    const header = [...new Set(mended.flatMap(({ cells }) => Object.keys(cells)))];
    const headers = Object.fromEntries(header.map((column) => [`${kind}.${column}`, column]));
    return {
      kind,
      header,
      headers,
      presentOf: () => new Set(header),
      translatorOf: () => ownTranslator(kind, header),
      file,
    };
  }
  const known = await readOnly(loadKnownThings, { timeoutSeconds: 60 });
  const ours = ourColumns(mended, matching);
  const matched = matchedRows(matching);
  return {
    ...matched,
    presentOf: (kind) => new Set([...matched.presentOf(kind), ...ours.presentOf(kind)]),
    translatorOf: (setting) => ours.over(translator(matching, matched.header, { ...setting, known })),
    file,
  };
}

function tableKindOf(kind: string): TableKind {
  if (isFileKind(kind) && isTableKind(kind)) return kind;
  throw new RangeError(`batchId: a load of ${kind} holds no rows that can be mended`);
}
