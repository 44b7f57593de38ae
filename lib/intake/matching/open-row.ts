import type { CellProblem } from "../parsed";
import type { CellNote } from "./translation";

export type RowCells = Record<string, string>;

/** What stood in the file for one column of ours. */
export interface CellOrigin {
  readonly source: string;
  readonly raw: string;
}

/** Where columns of ours stand in the file, by target column. */
export type ColumnPlaces = ReadonlyMap<string, { readonly source: string; readonly place: number }>;

/** A row while it is being translated. */
export class OpenRow {
  /** Cells of the file's own kind. */
  readonly own: RowCells;
  /** Cells of the part line that a row of jobs may carry; undefined where it carries none. */
  line: RowCells | undefined;
  readonly notes: CellNote[] = [];
  readonly problems: CellProblem[] = [];
  private readonly cells: readonly string[];
  private readonly places: ColumnPlaces;

  constructor(own: RowCells, line: RowCells | undefined, cells: readonly string[], places: ColumnPlaces) {
    this.own = own;
    this.line = line;
    this.cells = cells;
    this.places = places;
  }

  /** By target column; undefined where it is matched to nothing. */
  origin(target: string): CellOrigin | undefined {
    const column = this.places.get(target);
    return column === undefined ? undefined : { source: column.source, raw: this.cells[column.place] ?? "" };
  }
}
