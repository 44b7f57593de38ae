import type { FileProblem } from "../parsed";

/** What a spreadsheet stores in a cell, where that is not the text that it shows. */
export type CellMark =
  | { readonly kind: "number"; readonly stored: string }
  /** A day or a time; the cell's text is then YYYY-MM-DD, with THH:MM:SS where it has a time of day. */
  | { readonly kind: "day"; readonly stored: string; readonly shown: string | undefined }
  | { readonly kind: "error"; readonly stored: string };

/** One row below the header, as it stands in the file. */
export interface SourceRow {
  /** As a spreadsheet numbers it; for JSON Lines the line. */
  readonly row: number;
  /** In the order of the header; a row may be shorter or longer. */
  readonly cells: readonly string[];
  /** By place of the cell; left out where all cells are plain text. */
  readonly marks?: ReadonlyMap<number, CellMark>;
  /** By place of the cell: the merged cells, named as A2:A5, from which it was filled; left out where there are none. */
  readonly merged?: ReadonlyMap<number, string>;
}

export type SourceItem =
  | ({ readonly kind: "row" } & SourceRow)
  /** A row that cannot be split into cells: its text as it stands, and why. Reading goes on below it. */
  | { readonly kind: "unread"; readonly row: number; readonly raw: string; readonly problem: FileProblem }
  /** The file cannot be read past this place; always the last item. */
  | { readonly kind: "problem"; readonly problem: FileProblem };
