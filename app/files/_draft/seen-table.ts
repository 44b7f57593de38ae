import type { TableLook } from "@/lib/intake/tables/look-at-table";
import type { CellMark, SourceRow } from "@/lib/intake/tables/source-row";

/** A row as the page shows it: what a spreadsheet stores beside what it shows. */
export interface SeenRow {
  readonly row: number;
  readonly cells: readonly string[];
  readonly marks: readonly (readonly [place: number, mark: CellMark])[];
}

/** What was seen in a file, as a draft can keep it. */
export interface SeenTable extends Omit<TableLook, "first" | "random" | "last" | "sample"> {
  /** The first, some from all over, and the last, each once, in the order of the file. */
  readonly shown: readonly SeenRow[];
}

/** A cell is cut in the draft where it is longer: the file itself keeps it whole. */
const longestShown = 300;

export function seenTable({ first, random, last, sample: _, ...look }: TableLook): SeenTable {
  const rows = new Map([...first, ...random, ...last].map((row) => [row.row, row]));
  return {
    ...look,
    shown: [...rows.values()].toSorted((a, b) => a.row - b.row).map(seenRow),
  };
}

function seenRow({ row, cells, marks }: SourceRow): SeenRow {
  return { row, cells: cells.map(cut), marks: [...(marks ?? [])] };
}

function cut(cell: string): string {
  return cell.length <= longestShown ? cell : `${cell.slice(0, longestShown)}…`;
}
