import type { SourceItem } from "./source-row";
import type { TableForm } from "./table-form";
import { textRows } from "./text-rows";

/** The rows below the header, in the order of the file. Memory does not grow with a text file. */
export async function* readRows(path: string, form: TableForm): AsyncGenerator<SourceItem> {
  const { headerRow } = form.kind === "lines" ? { headerRow: 0 } : form;
  for await (const item of allRows(path, form)) if (item.kind === "problem" || item.row > headerRow) yield item;
}

function allRows(path: string, form: TableForm): AsyncGenerator<SourceItem> {
  switch (form.kind) {
    case "text":
      return textRows(path, form);
    case "workbook":
    case "lines":
      throw new RangeError(`form: ${form.kind} is not read yet`);
  }
}
