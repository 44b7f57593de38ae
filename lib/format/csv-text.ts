/** A cell of a table for a file: text is guarded against being run as a formula, numbers stay numbers. */
export type CsvCell = string | number | null | undefined;

/**
 * Rows as CSV (RFC 4180: CRLF, quotes doubled) with a byte order mark, so that spreadsheets read it as UTF-8.
 * Text that a spreadsheet would run as a formula gets an apostrophe in front. Source: OWASP, CSV injection.
 */
export function csvText(header: readonly string[], rows: readonly (readonly CsvCell[])[]): string {
  return `\uFEFF${[header, ...rows].map(csvLine).join("")}`;
}

/** One row with its line end, for files that are written row by row. */
export function csvLine(cells: readonly CsvCell[]): string {
  return `${cells.map(csvCell).join(",")}\r\n`;
}

const runsAsFormula = /^[=+\-@\t\r\n\0\uFF1D\uFF0B\uFF0D\uFF20]/;
/** No formula, and it must stay a number. */
const negativeNumber = /^-\d[\d.,]*$/;
const needsQuotes = /[",\r\n;\t]|^\s|\s$/;

function csvCell(cell: CsvCell): string {
  if (cell === undefined || cell === null) return "";
  if (typeof cell === "number") return String(cell);
  const guarded = runsAsFormula.test(cell) && !negativeNumber.test(cell) ? `'${cell}` : cell;
  return needsQuotes.test(guarded) ? `"${guarded.replaceAll('"', '""')}"` : guarded;
}
