import type { SourceRow } from "./source-row";

export interface HeaderGuess {
  readonly headerRow: number;
  readonly reason: string;
  /** Whether the row holds names beyond doubt; otherwise a person is asked. */
  readonly sure: boolean;
}

const rowsLookedAt = 30;

/** The first row that is about as wide as those below it and holds words, hardly any values. Titles and dates above it are narrower. */
export function guessHeaderRow(beginning: readonly SourceRow[]): HeaderGuess {
  const looked = beginning.slice(0, rowsLookedAt);
  const width = usualWidth(beginning);
  const wide = looked.filter((row) => filled(row) >= Math.max(1, Math.ceil(width * 0.6)));
  const named = wide.find((row) => row.cells.filter(isValue).length <= filled(row) / 10); // a year may be a name
  const [first] = wide;
  if (named === undefined || first === undefined) {
    const row = first ?? looked[0];
    return {
      headerRow: row?.row ?? 1,
      reason: `Row ${row?.row ?? 1}: the first wide row. It holds numbers or days, so it may not be a header.`,
      sure: false,
    };
  }
  const sure = new Set(named.cells.map((cell) => cell.trim().toLowerCase())).size > named.cells.length / 2;
  const above = looked.some((row) => row.row < named.row) ? "; the rows above it are narrower or hold values" : "";
  return { headerRow: named.row, reason: `Row ${named.row}: the first row with a word in most columns${above}.`, sure };
}

function filled(row: SourceRow): number {
  return row.cells.filter((cell) => cell.trim() !== "").length;
}

/** The middle one of the widths. */
function usualWidth(rows: readonly SourceRow[]): number {
  const sorted = rows.map(filled).sort((a, b) => a - b);
  return sorted[Math.floor(sorted.length / 2)] ?? 0;
}

/** A number, an amount, a day or a time. A long text is a note rather than the name of a column. */
function isValue(cell: string): boolean {
  const text = cell.trim();
  return text.length > 100 || /^[\p{Sc}+\-(]*\s*\d[\d\s.,:/\-T]*[)%]?$/u.test(text);
}
