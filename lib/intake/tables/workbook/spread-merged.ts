import type { CellMark } from "../source-row";
import type { MergedCells } from "./merged-cells";

interface OpenRow {
  readonly row: number;
  readonly cells: string[];
  readonly marks: Map<number, CellMark>;
}

/** Says of each row below the first of merged cells what they hold. Rows must come in their order. */
export class MergedSpread {
  #next = 0;
  #open: { readonly cells: MergedCells; readonly text: string; readonly mark: CellMark | undefined }[] = [];
  readonly #merged: readonly MergedCells[];

  /** @param merged  by their first row */
  constructor(merged: readonly MergedCells[]) {
    this.#merged = merged;
  }

  /** Fills blank cells of the row from merged ones. @returns the ranges, by place of the cell */
  fill({ row, cells, marks }: OpenRow): ReadonlyMap<number, string> {
    const filled = new Map<number, string>();
    this.#open = this.#open.filter(({ cells: { last } }) => last >= row);
    for (const { cells: merged, text, mark } of this.#open) {
      if ((cells[merged.column] ?? "") !== "") continue;
      while (cells.length < merged.column) cells.push("");
      cells[merged.column] = text;
      if (mark !== undefined) marks.set(merged.column, mark);
      filled.set(merged.column, merged.range);
    }
    for (
      let merged = this.#merged[this.#next];
      merged !== undefined && merged.first <= row;
      merged = this.#merged[++this.#next]
    ) {
      const text = merged.first === row ? (cells[merged.column] ?? "") : "";
      if (text !== "") this.#open.push({ cells: merged, text, mark: marks.get(merged.column) });
    }
    return filled;
  }
}
