import type { MendResult } from "@/db/writes/mend-held-rows";
import { formatCount, formatCounted } from "@/lib/format/format-count";
import type { RowProblem } from "@/lib/intake/parsed";

export type MendState =
  | { readonly kind: "untouched" }
  | { readonly kind: "refused"; readonly sentence: string }
  /** A dry run: how many would come in, and what is still wrong. */
  | {
      readonly kind: "seen";
      readonly sentence: string;
      readonly good: number;
      readonly problems: readonly RowProblem[];
    };

export function mendStateOf(result: MendResult): MendState {
  switch (result.kind) {
    case "no such load":
      return { kind: "refused", sentence: "There is no such load any more." };
    case "taken back":
      return { kind: "refused", sentence: "The load was taken back meanwhile." };
    case "nothing held":
      return { kind: "refused", sentence: "These rows wait no longer: they were corrected or left out meanwhile." };
    case "unreadable":
      return { kind: "refused", sentence: result.problems.map(({ problem, fix }) => `${problem} ${fix}`).join(" ") };
    case "loaded before":
    case "added":
      return { kind: "refused", sentence: "They are in." };
    case "checked":
    case "refused": {
      const { rowsNew, rowsChanged, rowsSame, rowsHeld, rowsRefused, rowsTotal, problems } = result.report;
      const parts = [
        ["new", rowsNew],
        ["changed", rowsChanged],
        ["already here", rowsSame],
        ["still held", rowsHeld],
        ["left out", rowsRefused],
      ] as const;
      const told = parts.filter(([, rows]) => rows > 0).map(([words, rows]) => `${formatCount(rows)} ${words}`);
      return {
        kind: "seen",
        sentence: `Of ${formatCounted(rowsTotal, "row")}: ${told.join(", ")}.`,
        good: rowsTotal - rowsHeld,
        problems,
      };
    }
  }
}
