// Text from outside becomes a value that cannot be wrong, or the list of everything that is wrong with it.

/** What is wrong with one cell, in words for whoever keeps the file. */
export interface CellProblem {
  /** As the header names it; empty where the whole row is meant. */
  readonly column: string;
  /** The cell as it stands in the file, shortened where it is very long. */
  readonly value: string;
  readonly problem: string;
  /** What to do about it. */
  readonly fix: string;
}

/** Row number as a spreadsheet shows it: the header is row 1. */
export interface RowProblem extends CellProblem {
  readonly row: number;
}

/** Why a file cannot be read at all, or not past some row. */
export interface FileProblem {
  readonly row?: number | undefined;
  readonly column?: string | undefined;
  readonly problem: string;
  readonly fix: string;
}

export type Parsed<T> =
  | { readonly ok: true; readonly value: T }
  | { readonly ok: false; readonly problems: readonly CellProblem[] };

const shownCharacters = 120;

export function shownValue(text: string): string {
  const visible = text.replaceAll("\0", "␀");
  return visible.length <= shownCharacters
    ? visible
    : `${visible.slice(0, shownCharacters)}… (${text.length} characters)`;
}
