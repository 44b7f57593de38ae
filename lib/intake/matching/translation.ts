import type { TableKind } from "../file-kinds";
import type { CellProblem } from "../parsed";
import type { Cells } from "../row-problems";

/** A cell that was not taken as it stood. Kept for good: raw cell, what was made of it, and why. */
export interface CellNote {
  /** Header of the file's column. */
  readonly source: string;
  /** Column of ours. */
  readonly column: string;
  readonly raw: string;
  readonly taken: string;
  readonly note: string;
  /** It follows from the matching alone, such as a day written another way, so it can be told anew from the raw row. */
  readonly ordinary?: true;
  /** Numbers on file that may be meant instead; whoever checks the rows can choose one. */
  readonly offers?: readonly string[];
}

/** What one row of somebody's file says, in rows of ours: text that still goes through the parser of its kind. */
export type Translation =
  | {
      readonly kind: "rows";
      readonly rows: readonly { readonly kind: TableKind; readonly cells: Cells }[];
      readonly notes: readonly CellNote[];
    }
  /** Something about a cell can't be settled without a person. */
  | { readonly kind: "held"; readonly problems: readonly CellProblem[] }
  /** No record, as a totals row, or none that counts, as a job that is not closed. Counted as refused, and listed with its reason. */
  | { readonly kind: "refused"; readonly reason: string };
