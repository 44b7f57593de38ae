import { Unreadable } from "../../unreadable";
import { mostColumns } from "../limits";
import type { CellMark, SourceRow } from "../source-row";
import { damaged, mostUnfoldedBytes, tooMany, unfoldsTooFar } from "./archive-problems";
import { cellText } from "./cell-text";
import { mergedCells } from "./merged-cells";
import type { Archive } from "./open-archive";
import { textGatherer, type WorkbookParts } from "./read-parts";
import { readXml } from "./read-xml";
import { MergedSpread } from "./spread-merged";

/** The rows of one sheet that have any text, a piece of the sheet at a time. @throws Unreadable for a damaged sheet */
export async function* sheetRows(archive: Archive, part: string, workbook: WorkbookParts): AsyncGenerator<SourceRow> {
  await archive.check(part);
  const reader = new SheetReader(workbook, new MergedSpread(await mergedCells(archive.again(part))));
  for await (const _ of readXml(archive.part(part), reader)) yield* reader.taken();
}

/** Gathers cells from the elements of a sheet. */
class SheetReader {
  private rows: SourceRow[] = [];
  private row = 0;
  private cells: string[] = [];
  private marks = new Map<number, CellMark>();
  private column = 0;
  private blank = true;
  private type = "";
  private style = "";
  private value = "";
  private formula: string | undefined;
  private inside: "value" | "formula" | "text" | undefined;
  /** Handed out so far. One shared text may fill a million cells, so bytes unfolded are not enough. */
  private readonly given = { characters: 0, cells: 0 };
  private readonly workbook: WorkbookParts;
  private readonly spread: MergedSpread;
  private readonly inline = textGatherer("is", (text) => {
    this.value = text;
  });

  constructor(workbook: WorkbookParts, spread: MergedSpread) {
    this.workbook = workbook;
    this.spread = spread;
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
    if (row > mostRows) throw damaged(new Error(`it has more than ${mostRows} rows in a sheet`));
    if (!Number.isSafeInteger(row) || row <= this.row) throw damaged(new Error("its rows are not in order"));
    this.row = row;
    this.cells = [];
    this.marks = new Map();
    this.column = -1;
    this.blank = true;
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
    if (this.column >= mostColumns) throw this.tooWide();
    while (this.cells.length < this.column) this.cells.push("");
    this.cells[this.column] = text;
    if (mark !== undefined) this.marks.set(this.column, mark);
    this.given.characters += text.length;
    this.blank &&= text.trim() === "";
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

  private tooWide(): Unreadable {
    return new Unreadable({
      row: this.row,
      problem: `Row ${this.row} of the sheet has a cell beyond column ${mostColumns}.`,
      fix: "Delete what stands far to the right of the table, and save the workbook again.",
    });
  }

  private closeRow(): void {
    const { row, cells, marks } = this;
    const merged = this.blank ? new Map<number, string>() : this.spread.fill({ row, cells, marks });
    this.given.cells += cells.length;
    for (const place of merged.keys()) this.given.characters += cells[place]?.length ?? 0;
    if (this.given.cells > mostCells) throw tooMany(mostCells, "cells");
    if (this.given.characters > mostUnfoldedBytes) throw unfoldsTooFar();
    if (this.blank) return;
    this.rows.push({ row, cells, ...(marks.size > 0 && { marks }), ...(merged.size > 0 && { merged }) });
  }
}

/** Of any sheet. Source: common practice of spreadsheet programs, no source. */
const mostRows = 1_048_576;

/** Blank ones between others counted; a workbook within the other bounds has fewer. */
const mostCells = 20_000_000;

/** The place of a column by its letters: A is 0. */
function columnOf(reference: string): number {
  let column = 0;
  for (let place = 0; place < reference.length && column <= mostColumns; place++) {
    const letter = reference.charCodeAt(place) & ~0x20;
    if (letter < 0x41 || letter > 0x5a) break;
    column = column * 26 + letter - 0x40;
  }
  if (column === 0) throw damaged(new Error(`it has a cell at ${reference.slice(0, 20)}`));
  return column - 1;
}
