import { capitalised } from "@/lib/format/capitalised";
import { formatCount, formatCounted } from "@/lib/format/format-count";
import type { FileKind } from "@/lib/intake/file-kinds";
import { rowNoun } from "./row-noun";
import type { RowCounts } from "./row-sum";

/** The act in words with its numbers: "Add 790 jobs, change 12, hold 5 back". */
export function actWords({ rowsNew, rowsChanged, rowsHeld }: RowCounts, kind: FileKind): string {
  const { one, many } = rowNoun(kind);
  const parts = [
    ...(rowsNew > 0 ? [`add ${formatCounted(rowsNew, one, many)}`] : []),
    ...(rowsChanged > 0
      ? [`change ${rowsNew > 0 ? formatCount(rowsChanged) : formatCounted(rowsChanged, one, many)}`]
      : []),
    ...(rowsHeld > 0 ? [`hold ${formatCounted(rowsHeld, "row")} back`] : []),
  ];
  return capitalised(parts.join(", "));
}
