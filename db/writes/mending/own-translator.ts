import type { TableKind } from "@/lib/intake/file-kinds";
import type { Translation } from "@/lib/intake/matching/translation";
import type { SourceRow } from "@/lib/intake/tables/source-row";

/** Rows in our own columns say what they say. */
export function ownTranslator(kind: TableKind, header: readonly string[]): (row: SourceRow) => Translation {
  return ({ cells }) => ({
    kind: "rows",
    rows: [{ kind, cells: Object.fromEntries(header.map((column, place) => [column, cells[place] ?? ""])) }],
    notes: [],
  });
}
