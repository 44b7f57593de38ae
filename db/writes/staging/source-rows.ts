import { createReadStream } from "node:fs";
import { readFile } from "node:fs/promises";
import { type FileKind, isTableKind, type TableKind } from "@/lib/intake/file-kinds";
import type { FileProblem } from "@/lib/intake/parsed";
import { readDocument } from "@/lib/intake/read-document";
import { readHeader } from "@/lib/intake/read-header";
import { readTable, type TableItem } from "@/lib/intake/read-table";
import type { SourceEnd, SourceRow } from "./stage-rows";

export type Source =
  | {
      readonly ok: true;
      readonly kind: FileKind;
      readonly present: ReadonlySet<string>;
      readonly rows: AsyncGenerator<SourceRow | SourceEnd> /** To be called where the rows are not read. */;
      readonly close: () => Promise<void>;
    }
  | { readonly ok: false; readonly problems: readonly FileProblem[] };

/** Opens a file: which kind it is, which columns it has, and its rows as a stream. */
export async function openSource(path: string, stated: FileKind | undefined): Promise<Source> {
  if (await isDocument(path)) return documentSource(await readFile(path), stated);
  if (stated !== undefined && !isTableKind(stated))
    return refuse({
      problem: `This is not a JSON document, which ${stated} must be.`,
      fix: "Name the file that holds it.",
    });
  return tableSource(path, stated);
}

/** A document begins with a brace; no header of ours does. */
async function isDocument(path: string): Promise<boolean> {
  for await (const chunk of createReadStream(path, { end: 1023 }))
    return /^\s*\{/.test(String(chunk).replace(/^\ufeff/, ""));
  return false;
}

function documentSource(bytes: Buffer, stated: FileKind | undefined): Source {
  const read = readDocument(bytes, stated);
  if (!read.ok) return read;
  async function* rows(parts: readonly unknown[]): AsyncGenerator<SourceRow> {
    for (const [index, document] of parts.entries())
      yield { row: index + 1, cells: { document: JSON.stringify(document) }, document };
  }
  const present = new Set(
    read.parts.flatMap((part) => (typeof part === "object" && part !== null ? Object.keys(part) : [])),
  );
  return { ok: true, kind: read.kind, present, rows: rows(read.parts), close: async () => {} };
}

async function tableSource(path: string, stated: TableKind | undefined): Promise<Source> {
  const items = readTable(createReadStream(path, { highWaterMark: 1 << 18 }));
  const first = await items.next();
  if (first.done === true)
    return refuse({ problem: "The file is empty.", fix: "Choose the file that holds the rows." });
  if (first.value.kind === "problem") return refuse(first.value.problem);
  const header = readHeader(first.value.cells, stated);
  const close = async () => void (await items.return(undefined)); // ends the reader, which closes the file
  if (header.ok)
    return {
      ok: true,
      kind: header.kind,
      present: new Set(header.columns),
      rows: tableRows(items, header.columns),
      close,
    };
  await close();
  return header;
}

async function* tableRows(
  items: AsyncGenerator<TableItem>,
  columns: readonly string[],
): AsyncGenerator<SourceRow | SourceEnd> {
  for await (const item of items) {
    if (item.kind === "problem") yield { end: item.problem };
    else yield rowOf(item.row, item.cells, columns);
  }
}

export function rowOf(row: number, given: readonly string[], columns: readonly string[]): SourceRow {
  const cells = Object.fromEntries(columns.map((column, index) => [column, given[index] ?? ""]));
  if (given.length === columns.length) return { row, cells };
  const extra = given.slice(columns.length);
  const problem = {
    column: "",
    value: extra.join(","),
    problem: `has ${given.length} cells; the header has ${columns.length}`,
    fix: "Put a cell that contains a comma in quotation marks; leave unknown cells blank but keep their commas.",
  };
  return { row, cells: extra.length === 0 ? cells : { ...cells, "": extra.join(",") }, problem };
}

function refuse(problem: FileProblem): Source {
  return { ok: false, problems: [problem] };
}
