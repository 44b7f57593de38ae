import { Unreadable } from "../../unreadable";
import type { CellMark, SourceRow } from "../source-row";
import { cellText } from "./cell-text";
import { type Archive, damaged, mostUnfoldedBytes, unfoldsTooFar } from "./open-archive";
import { textGatherer, type WorkbookParts } from "./read-parts";
import { readXml } from "./read-xml";

/** The rows of one sheet that have any text, a piece of the sheet at a time. @throws Unreadable for a damaged sheet */
export async function* sheetRows(archive: Archive, part: string, workbook: WorkbookParts): AsyncGenerator<SourceRow> {
  const reader = new SheetReader(workbook);
  for await (const _ of readXml(archive.part(part), reader)) yield* reader.taken();
}

/** Gathers cells from the elements of a sheet. */
class SheetReader {
  private rows: SourceRow[] = [];
  private row = 0;
  private cells: string[] = [];
  private marks = new Map<number, CellMark>();
  private column = 0;
  private type = "";
  private style = "";
  private value = "";
  private formula: string | undefined;
  private inside: "value" | "formula" | "text" | undefined;
  /** Characters and cells handed out. One shared text may fill a million cells, so bytes unfolded are not enough. */
  private given = 0;
  private readonly workbook: WorkbookParts;
  private readonly inline = textGatherer("is", (text) => {
    this.value = text;
  });

  constructor(workbook: WorkbookParts) {
    this.workbook = workbook;
  }

  taken(): readonly SourceRow[] {
    const { rows } = this;
    this.rows = [];
    return rows;
  }

  open = (name: string, attributes: Readonly<Record<string, string>>): void => {
    if (name === "c") this.openCell(attributes);
    else if (name === "v") this.inside = "value";
    else if (name === "f") {
      this.inside = "formula";
      this.formula = "";
    } else if (name === "row") this.openRow(attributes.r);
    else if (name === "is" || this.inside === "text") {
      this.inside = "text";
      this.inline.open(name);
    }
  };

  text = (piece: string): void => {
    if (this.inside === "value") this.value += piece;
    else if (this.inside === "text") this.inline.text(piece);
    else if (this.inside === "formula") this.formula += piece;
  };

  close = (name: string): void => {
    if (name === "c") this.closeCell();
    else if (name === "row") this.closeRow();
    else if (this.inside === "text") {
      this.inline.close(name);
      if (name === "is") this.inside = undefined;
    } else this.inside = undefined;
  };

  private openRow(number: string | undefined): void {
    const row = number === undefined ? this.row + 1 : Number(number);
    if (!Number.isSafeInteger(row) || row <= this.row) throw damaged(new Error("its rows are not in order"));
    this.row = row;
    this.cells = [];
    this.marks = new Map();
    this.column = -1;
  }

  private openCell({ r, t = "n", s = "" }: Readonly<Record<string, string>>): void {
    this.column = r === undefined ? this.column + 1 : columnOf(r);
    this.type = t;
    this.style = s;
    this.value = "";
    this.formula = undefined;
  }

  private closeCell(): void {
    const { type, formula } = this;
    if (this.value === "" && formula === undefined) return;
    const format = this.style === "" ? undefined : this.workbook.formats[Number(this.style)];
    const value = type === "s" ? this.sharedText() : this.value;
    const { text, mark } = cellText({ type, format, value, formula }, this.workbook.dateBase);
    if (text === "") return;
    while (this.cells.length < this.column) this.cells.push("");
    this.cells[this.column] = text;
    if (mark !== undefined) this.marks.set(this.column, mark);
    this.given += text.length;
  }

  private sharedText(): string {
    const text = this.workbook.sharedTexts[Number(this.value)];
    if (text !== undefined) return text;
    throw new Unreadable({
      row: this.row,
      problem: `The workbook is damaged: a cell of row ${this.row} refers to a text that is not there.`,
      fix: "Open it in a spreadsheet program and save it anew.",
    });
  }

  private closeRow(): void {
    const { row, cells, marks } = this;
    this.given += cells.length;
    if (this.given > mostUnfoldedBytes) throw unfoldsTooFar();
    if (!cells.some((cell) => cell.trim() !== "")) return;
    this.rows.push(marks.size === 0 ? { row, cells } : { row, cells, marks });
  }
}

const mostColumns = 16_384;

/** The place of a column by its letters: A is 0. */
function columnOf(reference: string): number {
  let column = 0;
  for (let place = 0; place < reference.length; place++) {
    const letter = reference.charCodeAt(place) & ~0x20;
    if (letter < 0x41 || letter > 0x5a) break;
    column = column * 26 + letter - 0x40;
    if (column > mostColumns) break;
  }
  if (column === 0 || column > mostColumns) throw damaged(new Error(`it has a cell at ${reference.slice(0, 20)}`));
  return column - 1;
}
