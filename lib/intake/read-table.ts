// CSV by RFC 4180, as a stream: memory does not grow with the file.
import { Readable } from "node:stream";
import { pipeline } from "node:stream/promises";
import { CsvError, parse } from "csv-parse";
import { decodeText } from "./decode-text";
import type { FileProblem } from "./parsed";
import { Unreadable } from "./unreadable";

export type TableItem =
  | { readonly kind: "row"; readonly row: number; readonly cells: readonly string[] }
  /** The file cannot be read, or not past this place; always the last item. */
  | { readonly kind: "problem"; readonly problem: FileProblem };

/** A record is far below this; beyond it a quotation mark was never closed. */
const longestRecordBytes = 4_000_000;

/** Rows in order, numbered as a spreadsheet numbers them; the header is row 1. Rows without any text are left out. */
export async function* readTable(bytes: AsyncIterable<Uint8Array>): AsyncGenerator<TableItem> {
  const parser = parse({
    relax_column_count: true,
    record_delimiter: ["\r\n", "\n", "\r"],
    max_record_size: longestRecordBytes,
  });
  const fed = pipeline(Readable.from(decodeText(bytes)), parser);
  fed.catch(() => {}); // the loop below meets the same error
  let row = 0;
  try {
    for await (const record of parser) {
      row++;
      const cells = record as string[]; // without `columns` a record is the list of its cells
      if (cells.some((cell) => cell.trim() !== "")) yield { kind: "row", row, cells };
    }
  } catch (error) {
    yield { kind: "problem", problem: problemOf(error) };
  } finally {
    parser.destroy();
  }
}

function problemOf(error: unknown): FileProblem {
  if (error instanceof Unreadable) return error.found;
  if (!(error instanceof CsvError)) throw error;
  const row = Number(error.records) + 1; // the reader runs ahead of what was taken from it, so only it knows the place
  switch (error.code) {
    case "CSV_QUOTE_NOT_CLOSED":
      return {
        row,
        problem: `Row ${row} opens a quotation mark that is never closed.`,
        fix: "Close it. A quotation mark inside a cell is written twice.",
      };
    case "CSV_MAX_RECORD_SIZE":
      return {
        row,
        problem: `Row ${row} is longer than ${longestRecordBytes / 1_000_000} MB.`,
        fix: "Look for a quotation mark that is opened and never closed.",
      };
    default:
      return {
        row,
        problem: `Row ${row} has a quotation mark in the wrong place.`,
        fix: 'Put the whole cell in quotation marks and write each one inside it twice: "a 3"" hose".',
      };
  }
}
