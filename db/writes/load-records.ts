import { createHash } from "node:crypto";
import type { Day } from "@/lib/calendar/day";
import type { FileKind } from "@/lib/intake/file-kinds";
import type { JobRecord } from "@/lib/intake/records/read-job-records";
import type { SourceItem } from "@/lib/intake/tables/source-row";
import type { LoadMode, LoadResult } from "./load-result";
import { loadRows } from "./load-rows";
import type { ImportSettings } from "./store-import";

export interface RecordsRequest {
  /** In our own columns; problems name the record by its place in this list, counted from 1. */
  readonly records: readonly JobRecord[];
  /** Who sent them, as the list of loads shows it. */
  readonly sender: string;
  readonly mode: LoadMode;
  readonly today?: Day;
  /** Done with the load in one transaction, whatever came of it, for example to store the answer. */
  readonly within?: ImportSettings["within"];
}

/**
 * Loads jobs that another program sends, with their part lines and readings, as one batch. What a
 * record does not name leaves stored values alone.
 */
export async function loadRecords({ records, sender, mode, today, within }: RecordsRequest): Promise<LoadResult> {
  if (records.length === 0) throw new RangeError("records: there are none");
  const text = JSON.stringify(records.map(({ kind, cells }) => [kind, cells]));
  const header = [
    ...new Set(records.flatMap(({ kind, cells }) => Object.keys(cells).map((column) => nameOf(kind, column)))),
  ];
  return await loadRows(
    {
      kind: "jobs",
      header,
      headers: Object.fromEntries(header.map((name) => [name.includes(".") ? name : `jobs.${name}`, name])),
      sparse: true,
      presentOf: (kind) => presentOf(records, kind),
      translatorOf: () => (row) => {
        const record = records[row.row - 1];
        if (record === undefined) throw new RangeError(`row: there is no record ${row.row}`);
        return { kind: "rows", rows: [record], notes: [] };
      },
      file: {
        fileName: sender,
        sha256: createHash("sha256").update(text).digest("hex"),
        bytes: Buffer.byteLength(text),
      },
      mode,
      ...(today === undefined ? {} : { today }),
      within,
    },
    () => asRows(records, header),
  );
}

function nameOf(kind: JobRecord["kind"], column: string): string {
  return kind === "jobs" ? column : `${kind}.${column}`;
}

function presentOf(records: readonly JobRecord[], kind: FileKind): ReadonlySet<string> {
  return new Set(records.flatMap((record) => (record.kind === kind ? Object.keys(record.cells) : [])));
}

async function* asRows(records: readonly JobRecord[], header: readonly string[]): AsyncGenerator<SourceItem> {
  for (const [index, { kind, cells }] of records.entries()) {
    const named = new Map(Object.entries(cells).map(([column, cell]) => [nameOf(kind, column), cell]));
    yield { kind: "row", row: index + 1, cells: header.map((name) => named.get(name) ?? "") };
  }
}
