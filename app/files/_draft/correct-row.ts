import type { CellNote } from "@/lib/intake/matching/translation";
import type { SourceRow } from "@/lib/intake/tables/source-row";
import type { Correction } from "./corrections";

interface CorrectedRow {
  readonly corrected: SourceRow;
  readonly notes: readonly CellNote[];
}

/** A row with the corrections that name it, and a note for each cell that was written over. */
export function correctRow(
  row: SourceRow,
  header: readonly string[],
  corrections: readonly Correction[],
): CorrectedRow {
  const named = corrections.filter(({ rows }) => rows.includes(row.row));
  if (named.length === 0) return { corrected: row, notes: [] };
  const cells = header.map((_, place) => row.cells[place] ?? "").concat(row.cells.slice(header.length));
  const marks = new Map(row.marks);
  const notes: CellNote[] = [];
  for (const { column, text } of named) {
    const place = header.indexOf(column);
    if (place < 0) continue;
    notes.push({
      source: column,
      column,
      raw: cells[place] ?? "",
      taken: text,
      note: "Corrected by hand before the load.",
    });
    cells[place] = text;
    marks.delete(place);
  }
  return { corrected: { row: row.row, cells, marks }, notes };
}
