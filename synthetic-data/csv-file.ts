import { once } from "node:events";
import { createWriteStream } from "node:fs";
import { finished } from "node:stream/promises";

/** One CSV file being written row by row. Row numbers are a spreadsheet's: the header is row 1. */
export interface CsvFile<Column extends string> {
  /** Writes one row and gives its number. Columns left out are blank. */
  readonly write: (cells: Partial<Record<Column, string | number | undefined>>) => number;
  /** Waits until the disk has caught up; call it every few hundred rows. */
  readonly settle: () => Promise<void>;
  readonly close: () => Promise<number>;
}

export function openCsvFile<Column extends string>(path: string, columns: readonly Column[]): CsvFile<Column> {
  const stream = createWriteStream(path, { encoding: "utf8" });
  let pending = `${columns.join(",")}\r\n`;
  let rows = 1;
  const flush = async () => {
    if (pending === "") return;
    const text = pending;
    pending = "";
    if (!stream.write(text)) await once(stream, "drain");
  };
  return {
    write: (cells) => {
      pending += `${columns.map((column) => csvCell(cells[column])).join(",")}\r\n`;
      rows += 1;
      return rows;
    },
    settle: flush,
    close: async () => {
      await flush();
      stream.end();
      await finished(stream);
      return rows - 1;
    },
  };
}

/** RFC 4180: quoted where the text holds a comma, a quote or a line break. */
export function csvCell(value: string | number | undefined): string {
  if (value === undefined) return "";
  const text = String(value);
  return /[",\r\n]/.test(text) ? `"${text.replaceAll('"', '""')}"` : text;
}
