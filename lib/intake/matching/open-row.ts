import type { TableKind } from "../file-kinds";
import type { CellProblem } from "../parsed";
import type { CellNote } from "./translation";

/** A row while it is being translated. */
export interface OpenRow {
  readonly cells: Map<TableKind, Record<string, string>>;
  readonly notes: CellNote[];
  readonly problems: CellProblem[];
  /** By kind and column of ours: what stood in the file. */
  readonly sources: Map<string, { readonly source: string; readonly raw: string }>;
}
