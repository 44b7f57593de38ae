// Which column of somebody's file is which column of ours, and what their words mean.
import type { TableKind } from "../file-kinds";

/** Columns of part lines that stand in a file of jobs are written `part-lines.part_number`; the file's own kind needs no prefix. */
export type TargetColumn = string;

export interface ColumnMatch {
  /** The header as it stands in the file. */
  readonly source: string;
  /** Undefined: not used; the raw row keeps it. */
  readonly target: TargetColumn | undefined;
}

export const dateOrders = ["day first", "month first", "year first"] as const;
export type DateOrder = (typeof dateOrders)[number];

export const labourUnits = ["hours", "minutes", "money"] as const;
export type LabourUnit = (typeof labourUnits)[number];

/** In a table of words: what every word becomes that has no entry of its own. */
export const anyOtherWord = "*";

/** Everything that turns rows of one file into rows of ours; kept with the load, and remembered for the next file with the same header. */
export interface Matching {
  readonly kind: TableKind;
  /** Whether several rows may belong to one job, each with a part line. */
  readonly rowIs: "one record" | "one part line";
  /** One for each column of the file, in its order. */
  readonly columns: readonly ColumnMatch[];
  readonly dateOrder: DateOrder;
  readonly decimalMark: "." | ",";
  /** What the labour column holds; only asked where one is matched. */
  readonly labourUnit: LabourUnit;
  /** By target column: their word, trimmed and in lower case, to our word; an empty word leaves the cell blank. */
  readonly words: Readonly<Record<TargetColumn, Readonly<Record<string, string>>>>;
  /** By target column: a value for every row, where the file has no column for it. */
  readonly constants: Readonly<Record<TargetColumn, string>>;
  /** First day of the day numbers that stand in text cells; undefined: not settled, so such a cell is held where both are possible. */
  readonly dayNumbersFrom?: 1900 | 1904 | undefined;
  /** By target column: how many digits its all-digit values have; a shorter one may have lost zeros in front. */
  readonly usualLengths?: Readonly<Record<TargetColumn, number>> | undefined;
}
