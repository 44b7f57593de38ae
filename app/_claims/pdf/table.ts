import { heightOf, type Style, styles, write } from "./say";
import { ink, keepTogether, type Sheet } from "./sheet";
import { ornament, tagged, within } from "./tags";

export interface Cell {
  readonly text: string;
  readonly style?: Style;
  /** Second paragraph of the cell, such as a source. */
  readonly note?: string | undefined;
  /** Drawn below the words. */
  readonly drawing?:
    | { readonly height: number; readonly alt: string; readonly draw: (x: number, y: number, width: number) => void }
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
  within(sheet, "Table", () => {
    drawRow(sheet, columns, head, "head");
    for (const row of all) {
      if (sheet.doc.y + rowHeight(sheet, columns, row) > sheet.bottom) {
        sheet.doc.addPage();
        drawRow(sheet, columns, head, "head again");
      }
      drawRow(sheet, columns, row, "body");
    }
  });
  sheet.doc.y += 8;
}

type RowKind = "head" | "head again" | "body";

function drawRow(sheet: Sheet, columns: readonly Column[], cells: readonly Cell[], kind: RowKind): void {
  const { doc, left, width } = sheet;
  const y = doc.y;
  const end = y + rowHeight(sheet, columns, cells);
  let x = left;
  const draw = () => {
    for (const [index, { share, align = "left" }] of columns.entries()) {
      const cell = cells[index];
      if (cell !== undefined) drawCell(sheet, cell, { x, y: y + padding, width: share * width - gutter, align }, kind);
      x += share * width;
    }
  };
  // A head that is repeated on a later page is heard once.
  if (kind === "head again") ornament(sheet, draw, "Pagination");
  else within(sheet, "TR", draw);
  ornament(sheet, () => {
    doc.lineWidth(0.5).strokeColor(kind === "body" ? ink.hairline : ink.text);
    doc
      .moveTo(left, end)
      .lineTo(left + width, end)
      .stroke();
  });
  doc.x = left;
  doc.y = end;
}

interface Place {
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly align: "left" | "right";
}

function drawCell(sheet: Sheet, cell: Cell, place: Place, kind: RowKind): void {
  if (kind === "body") within(sheet, "TD", () => drawBody(sheet, cell, place));
  else if (kind === "head") tagged(sheet, "TH", () => drawWords(sheet, cell, place), { scope: "Column" });
  else drawWords(sheet, cell, place);
}

function drawBody(sheet: Sheet, cell: Cell, place: Place): void {
  const { doc } = sheet;
  const { note, drawing } = cell;
  const { x, y, width, align } = place;
  doc.y = y;
  if (cell.text !== "") tagged(sheet, "P", () => drawWords(sheet, cell, place));
  if (note !== undefined) tagged(sheet, "P", () => write(sheet, note, styles.note, x, doc.y, { width, align }));
  if (drawing === undefined) return;
  const top = doc.y + 2;
  const bbox: [number, number, number, number] = [x, top, x + width, top + drawing.height];
  tagged(sheet, "Figure", () => drawing.draw(x, top, width), { alt: drawing.alt, bbox });
}

function drawWords(sheet: Sheet, { text, style = styles.small }: Cell, { x, y, width, align }: Place): void {
  write(sheet, text, style, x, y, { width, align });
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
