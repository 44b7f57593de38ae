import { visible } from "./shown-json";

/** The cells of a row by header; a header that is there twice, or a cell past the last header, is told by its place. */
export function namedCells(header: readonly string[], cells: readonly string[]): Record<string, string> {
  const named = new Map<string, string>();
  for (let place = 0; place < Math.max(header.length, cells.length); place++)
    named.set(columnName(header, place), cells[place] ?? "");
  return Object.fromEntries(named);
}

/** What a column of somebody's file is called here: its header where that is there and names one column only. */
export function columnName(header: readonly string[], place: number): string {
  const name = visible(header[place] ?? "");
  return name !== "" && header.indexOf(header[place] ?? "") === place ? name : `${name} (column ${place + 1})`.trim();
}
