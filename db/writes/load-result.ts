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

/** New, changed, same and held add up to the total. */
export interface LoadReport {
  readonly fileKind: FileKind;
  readonly rowsTotal: number;
  readonly rowsNew: number;
  readonly rowsChanged: number;
  readonly rowsSame: number;
  /** Rows with problems; in a load that sets them aside they are kept with it. */
  readonly rowsHeld: number;
  /** Of the first rows that have any, by row. */
  readonly problems: readonly RowProblem[];
}

/** Check only; add the whole file or nothing; or add the good rows and keep the others aside. */
export type LoadMode = "dry run" | "add" | "add and set aside";
