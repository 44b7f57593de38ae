import { lineKeys, lineRows } from "./lines/line-rows";
import type { SourceItem } from "./source-row";
import type { TableForm } from "./table-form";
import { textRows } from "./text-rows";
import { workbookRows } from "./workbook/workbook-rows";

/**
 * The rows below the header, in the order of the file. Memory does not grow with a text file. A row that cannot be
 * split is an item of its own; a file that cannot be read on ends with its problem, and nothing is thrown for either.
 */
export async function* readRows(path: string, form: TableForm): AsyncGenerator<SourceItem> {
  switch (form.kind) {
    case "text":
      yield* below(form.headerRow, textRows(path, form));
      return;
    case "workbook":
      yield* below(form.headerRow, workbookRows(path, form));
      return;
    case "lines":
      yield* lineRows(path, form.encoding, await lineKeys(path, form.encoding));
  }
}

async function* below(headerRow: number, items: AsyncIterable<SourceItem>): AsyncGenerator<SourceItem> {
  for await (const item of items) if (item.kind === "problem" || item.row > headerRow) yield item;
}
