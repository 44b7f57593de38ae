import { formatCount, formatCounted } from "@/lib/format/format-count";
import { rowNoun } from "../../../_components/row-noun";
import type { OpenDraft } from "../../../_draft/open-draft";

/** What the dry run found, in one sentence. */
export function findingOf({ fileName, notes: { checked } }: OpenDraft): string {
  if (checked?.kind === "loaded before") return `${fileName} was loaded before`;
  if (checked === undefined || !("report" in checked)) return `The rows of ${fileName} are not checked`;
  const { fileKind, rowsNew, rowsChanged, rowsHeld } = checked.report;
  const { one, many } = rowNoun(fileKind);
  const found = [
    ...(rowsNew > 0 ? [formatCounted(rowsNew, `new ${one}`, `new ${many}`)] : []),
    ...(rowsChanged > 0 ? [`${formatCount(rowsChanged)} changed`] : []),
  ];
  const good = found.length === 0 ? "nothing new" : found.join(", ");
  const held =
    rowsHeld === 0 ? "every row is good" : `${formatCounted(rowsHeld, "row has a problem", "rows have a problem")}`;
  return `${fileName}: ${good}; ${held}`;
}
