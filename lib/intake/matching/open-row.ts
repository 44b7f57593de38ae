import type { CellProblem } from "../parsed";
import type { CellNote } from "./translation";

export type RowCells = Record<string, string>;

/** What stood in the file for one column of ours. */
export interface CellOrigin {
  readonly source: string;
  readonly raw: string;
}

/** A row while it is being translated. */
export interface OpenRow {
  /** Cells of the file's own kind. */
  readonly own: RowCells;
  /** Cells of the part line that a row of jobs may carry; undefined where it carries none. */
  line: RowCells | undefined;
  readonly notes: CellNote[];
  readonly problems: CellProblem[];
  /** By target column; undefined where it is matched to nothing, or the row has no such cell. */
  readonly origin: (target: string) => CellOrigin | undefined;
}
