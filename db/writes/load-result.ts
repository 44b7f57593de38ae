import type { FileKind } from "@/lib/intake/file-kinds";
import type { FileProblem, RowProblem } from "@/lib/intake/parsed";

/** What came of a file. Only `added` changed anything. */
export type LoadResult =
  /** It cannot be read, or not as one of ours. */
  | { readonly kind: "unreadable"; readonly problems: readonly FileProblem[] }
  /** The same bytes are already in. */
  | {
      readonly kind: "loaded before";
      readonly batchId: number;
      readonly fileName: string;
      readonly addedAt: string;
      readonly rows: number;
    }
  /** Dry run. */
  | { readonly kind: "checked"; readonly report: LoadReport }
  /** To be added whole, but some rows have problems. */
  | { readonly kind: "refused"; readonly report: LoadReport }
  | { readonly kind: "added"; readonly batchId: number; readonly report: LoadReport };

/** New, changed, same, held and refused add up to the total: each row of the file has one fate. */
export interface LoadReport {
  readonly fileKind: FileKind;
  readonly rowsTotal: number;
  readonly rowsNew: number;
  readonly rowsChanged: number;
  readonly rowsSame: number;
  /** Rows with problems; in a load that sets them aside they are kept with it. */
  readonly rowsHeld: number;
  /** Rows that are no record: totals, repeated headers, notes below the table. Kept with their reasons. */
  readonly rowsRefused: number;
  /** Of the first rows that have any, by row. Columns go by the file's own header where it has one for them. */
  readonly problems: readonly RowProblem[];
  /** The first refused rows. */
  readonly refused: readonly RefusedRow[];
  /** Of the first rows that change something stored, field by field. */
  readonly changes: readonly FieldChange[];
  /** Fields that were edited here and of which the file says otherwise: the edit stands. */
  readonly keptEdits: readonly KeptEdit[];
  /** Cells that were taken as they stand although a number on file comes close, of the first rows that have any. */
  readonly offers?: readonly OfferedCell[] | undefined;
}

export interface OfferedCell {
  readonly row: number;
  /** Header of the file's column, and what stands there. */
  readonly column: string;
  readonly value: string;
  readonly note: string;
  /** What may be meant instead. */
  readonly offers: readonly string[];
}

export interface RefusedRow {
  readonly row: number;
  readonly reason: string;
}

export interface FieldChange {
  readonly row: number;
  /** What people call the row's record, and its name: job, J-1042. */
  readonly noun: string;
  readonly name: string;
  /** As stored, for example labour_cents. */
  readonly column: string;
  /** Undefined: no value. */
  readonly before: string | undefined;
  readonly after: string | undefined;
}

export interface KeptEdit extends FieldChange {
  readonly editedAt: string;
  readonly by: string;
}

/** Check only; add the whole file or nothing; or add the good rows and keep the others aside. */
export type LoadMode = "dry run" | "add" | "add and set aside";

/** What a load is doing; rows are told where they are being counted. */
export type LoadPhase = "reading" | "checking" | "adding" | "counting";

export interface LoadWatch {
  readonly onProgress?: ((rowsDone: number, phase: LoadPhase) => void) | undefined;
  /** Ends the load between two statements by throwing the signal's reason; nothing of it stays. */
  readonly signal?: AbortSignal | undefined;
}
