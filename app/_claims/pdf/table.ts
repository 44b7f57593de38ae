import { clean, heightOf, type Style, setStyle, styles } from "./say";
import { ink, keepTogether, type Sheet } from "./sheet";

export interface Cell {
  readonly text: string;
  readonly style?: Style;
  /** Second paragraph of the cell, such as a source. */
  readonly note?: string | undefined;
  /** Drawn below the words. */
  readonly drawing?:
    | { readonly height: number; readonly draw: (x: number, y: number, width: number) => void }
    | undefined;
}

export interface Column {
  readonly head: string;
  /** Part of the width; the parts of a table add up to 1. */
  readonly share: number;
  readonly align?: "left" | "right";
}

const padding = 4;
/** Between a cell and the next; figures on the right would otherwise touch the words beside them. */
const gutter = 9;
/** Longer words of one cell go on in a row below, so that no row is taller than a page. */
const longest = 500;

/** A table whose head is repeated on every page and whose rows are never cut. */
export function drawTable(sheet: Sheet, columns: readonly Column[], rows: readonly (readonly Cell[])[]): void {
  const head = columns.map(({ head: text }): Cell => ({ text, style: styles.smallBold }));
  const headHeight = rowHeight(sheet, columns, head);
  const all = rows.flatMap(splitLong);
  const first = all[0];
  keepTogether(sheet, headHeight + (first === undefined ? 0 : rowHeight(sheet, columns, first)));
  drawRow(sheet, columns, head, headHeight, ink.text);
  for (const row of all) {
    const height = rowHeight(sheet, columns, row);
    if (sheet.doc.y + height > sheet.bottom) {
      sheet.doc.addPage();
      drawRow(sheet, columns, head, headHeight, ink.text);
    }
    drawRow(sheet, columns, row, height, ink.hairline);
  }
  sheet.doc.y += 8;
}

function drawRow(
  sheet: Sheet,
  columns: readonly Column[],
  cells: readonly Cell[],
  height: number,
  lineColour: string,
): void {
  const { doc, left, width } = sheet;
  const y = doc.y;
  let x = left;
  for (const [index, { share, align = "left" }] of columns.entries()) {
    const cell = cells[index];
    if (cell !== undefined) drawCell(sheet, cell, { x, y: y + padding, width: share * width - gutter, align });
    x += share * width;
  }
  const end = y + height;
  doc
    .lineWidth(0.5)
    .strokeColor(lineColour)
    .moveTo(left, end)
    .lineTo(left + width, end)
    .stroke();
  doc.x = left;
  doc.y = end;
}

interface Place {
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly align: "left" | "right";
}

function drawCell(sheet: Sheet, { text, style = styles.small, note, drawing }: Cell, { x, y, width, align }: Place) {
  const { doc } = sheet;
  setStyle(sheet, style).text(clean(text), x, y, { width, align });
  if (text === "") doc.y = y;
  if (note !== undefined) setStyle(sheet, styles.note).text(clean(note), x, doc.y, { width, align });
  drawing?.draw(x, doc.y + 2, width);
}

function rowHeight(sheet: Sheet, columns: readonly Column[], cells: readonly Cell[]): number {
  const heights = cells.map((cell, index) =>
    cellHeight(sheet, cell, (columns[index]?.share ?? 0) * sheet.width - gutter),
  );
  return Math.max(...heights) + 2 * padding;
}

function cellHeight(sheet: Sheet, { text, style = styles.small, note, drawing }: Cell, width: number): number {
  const words = text === "" ? 0 : heightOf(sheet, text, style, width);
  const below = note === undefined ? 0 : heightOf(sheet, note, styles.note, width);
  return words + below + (drawing === undefined ? 0 : drawing.height + 2);
}

function splitLong(row: readonly Cell[]): readonly (readonly Cell[])[] {
  const texts = row.map(({ text }) => pieces(text));
  const notes = row.map(({ note }) => (note === undefined ? [] : pieces(note)));
  const count = Math.max(...texts.map(({ length }) => length), ...notes.map(({ length }) => length));
  return Array.from({ length: count }, (_, piece) =>
    row.map(({ drawing, ...cell }, column) => ({
      ...cell,
      text: texts[column]?.[piece] ?? "",
      note: notes[column]?.[piece],
      drawing: piece === 0 ? drawing : undefined,
    })),
  );
}

function pieces(text: string): readonly string[] {
  if (text.length <= longest) return [text];
  const space = text.lastIndexOf(" ", longest);
  const cut = space > 0 ? space + 1 : longest;
  return [text.slice(0, cut).trimEnd(), ...pieces(text.slice(cut))];
}
