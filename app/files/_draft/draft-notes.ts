import type { LoadResult } from "@/db/writes/load-result";
import type { MatchingGuess } from "@/lib/intake/matching/guess-matching";
import type { FileProblem } from "@/lib/intake/parsed";
import type { FormWishes } from "@/lib/intake/tables/look-at-table";
import type { FileTask } from "../_work/work-state";
import type { SaidNotation } from "./as-said";
import type { Correction } from "./corrections";
import type { SeenTable } from "./seen-table";

/** What a draft keeps of what was seen and said, beside its form and matching. */
export interface DraftNotes {
  /** Ours in columns and notation, or a document of ours: nothing has to be matched. */
  readonly ours: boolean;
  readonly wishes: FormWishes;
  /** What a person said of the notation; it overrules the guess. */
  readonly said: SaidNotation;
  readonly seen?: SeenTable | undefined;
  readonly guess?: MatchingGuess | undefined;
  /** Why the file cannot be read at all. */
  readonly unreadable?: readonly FileProblem[] | undefined;
  /** Cells that a person corrected before the load. */
  readonly corrections?: readonly Correction[] | undefined;
  /** What the last dry run gave; dropped by every change. */
  readonly checked?: LoadResult | undefined;
  /** The load that came of it. */
  readonly added?: number | undefined;
  /** How the last work on it ended, where it did not come to its end. */
  readonly broken?: { readonly task: FileTask; readonly sentence: string } | undefined;
}
