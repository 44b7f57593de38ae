import type { FileProblem } from "../parsed";
import { mostColumns } from "./limits";
import type { SourceItem } from "./source-row";

/** A row is far below this; beyond it a quotation mark was never closed, or the file has no rows. */
const longestRow = 4_000_000;

/**
 * Delimited text to rows, by RFC 4180 and, where a file departs from it, so that nothing is lost: a quotation mark
 * inside an unquoted cell is text; one that is opened and never closed costs its own line, which is handed out as it
 * stands, and not the lines below. Rows are numbered as a spreadsheet numbers them; those without any text are left out.
 *
 * It is a splitter of our own because a reader that has met such a mark cannot be told to go on from the next line;
 * it agrees with csv-parse wherever both can read.
 */
export class RowSplitter {
  private text = "";
  private at = 0;
  private row = 0;
  private ended = false;
  /** Next place of each, at or after `at`; found once and kept, so that the whole text is searched once. */
  private places = { ...unsearched };
  private placesAtRow = { ...unsearched };
  /** Cells of the last row that is a line by itself. */
  private width = 0;
  private readonly delimiter: string;

  constructor(delimiter: string) {
    this.delimiter = delimiter;
  }

  /** Rows that are complete with this text. */
  push(text: string): SourceItem[] {
    this.text = this.at === this.text.length ? text : this.text.slice(this.at) + text;
    this.at = 0;
    this.places = { ...unsearched };
    this.placesAtRow = this.places;
    return this.take();
  }

  /** Rows that are complete because the text ends. */
  end(): SourceItem[] {
    this.ended = true;
    this.places = { ...unsearched };
    this.placesAtRow = this.places;
    return this.take();
  }

  private take(): SourceItem[] {
    const items: SourceItem[] = [];
    while (this.at < this.text.length) {
      const taken = this.takeRow();
      if (taken === "more") break;
      if (taken !== undefined) items.push(taken);
      if (taken?.kind === "problem") break;
    }
    return items;
  }

  private takeRow(): SourceItem | "more" | undefined {
    const start = this.text.charCodeAt(this.at) === byteOrderMark ? this.at + 1 : this.at; // files were joined end to end
    const lineEnd = this.lineEndFrom(start);
    if (lineEnd === -1) return this.text.length - start <= longestRow ? "more" : this.giveUp();
    if (this.place("quote", '"', start) >= lineEnd) {
      const cells = this.text.slice(start, lineEnd).split(this.delimiter, mostColumns + 1);
      if (cells.length > 1) this.width = cells.length;
      return this.rowOf(cells, start, lineEnd);
    }
    return this.takeQuoted(start, lineEnd);
  }

  private takeQuoted(start: number, lineEnd: number): SourceItem | "more" | undefined {
    const cells: string[] = [];
    this.placesAtRow = { ...this.places };
    for (let from = start, end = lineEnd; ; ) {
      const cell = this.takeCell(from, end);
      if (cell === "more") return "more";
      if ("problem" in cell) return this.unread(start, lineEnd, cell);
      if (cell.stop > end && this.swallows(cell.text)) return this.unread(start, lineEnd, swallowsRows);
      cells.push(cell.text);
      if (cell.stop > end) end = this.lineEndFrom(cell.stop);
      if (end === -1) return "more";
      if (end === lineEnd && cell.stop === end) this.width = cells.length;
      if (cell.stop === end) return this.rowOf(cells, start, end);
      if (cells.length > mostColumns) return this.unread(start, lineEnd, tooWide);
      from = cell.stop + 1;
    }
  }

  /** One cell and the place where it stops: a delimiter, or the end of the line. */
  private takeCell(from: number, lineEnd: number): Cell | "more" {
    const { text } = this;
    const open = this.opening(from, lineEnd);
    if (open === undefined) return this.plainCell(from, from, lineEnd);
    let doubled = false;
    let close = text.indexOf('"', open + 1);
    while (close !== -1 && text.charCodeAt(close + 1) === quote) {
      doubled = true;
      close = text.indexOf('"', close + 2);
    }
    const indented = open > from;
    if (indented && (close === -1 || close > lineEnd)) return this.plainCell(from, from, lineEnd);
    if (close === -1 || close + 1 >= text.length) {
      if (!this.ended && text.length - open <= longestRow) return "more";
      if (close === -1) return neverClosed;
    }
    const stop = this.stopAfter(close + 1);
    if (stop === text.length && !this.ended) return "more";
    if (stop !== undefined) {
      const inside = text.slice(open + 1, close);
      return { text: doubled ? inside.replaceAll('""', '"') : inside, stop };
    }
    return close < lineEnd ? this.plainCell(from, close, lineEnd) : closedElsewhere;
  }

  /** Place of the quotation mark that opens this cell; spaces may stand before it. */
  private opening(from: number, lineEnd: number): number | undefined {
    let at = from;
    while (at < lineEnd && this.text.charCodeAt(at) === space) at++;
    return this.text.charCodeAt(at) === quote && at < lineEnd ? at : undefined;
  }

  /** Where the cell stops if only spaces follow its closing mark. */
  private stopAfter(close: number): number | undefined {
    let at = close;
    while (this.text.charCodeAt(at) === space) at++;
    const next = this.text.charCodeAt(at);
    const stops =
      at >= this.text.length || next === feed || next === carriageReturn || this.text[at] === this.delimiter;
    return stops ? at : undefined;
  }

  private plainCell(from: number, searchedTo: number, lineEnd: number): Cell {
    const found = this.text.indexOf(this.delimiter, searchedTo);
    const stop = found === -1 || found > lineEnd ? lineEnd : found;
    return { text: this.text.slice(from, stop), stop };
  }

  /** Whether a cell holds lines that are as wide as the row before, all of them: rows that stand for themselves, not prose. */
  private swallows(cell: string): boolean {
    if (this.width < narrow) return false;
    const inside = cell.split(/\r\n|\n|\r/).slice(1, -1);
    return inside.length > 0 && inside.every((line) => line.split(this.delimiter).length === this.width);
  }

  private unread(start: number, lineEnd: number, { problem }: Failure): SourceItem {
    this.places = { ...this.placesAtRow }; // what was found on later lines lies beyond the next row
    this.row++;
    this.at = this.afterBreak(lineEnd);
    const { row } = this;
    return { kind: "unread", row, raw: this.text.slice(start, lineEnd), problem: { ...problem, row } };
  }

  /** Without a line end there are no rows to go on with. */
  private giveUp(): SourceItem {
    this.at = this.text.length;
    const row = this.row + 1;
    const problem = `Row ${row} has more than ${longestRow / 1_000_000} million characters and no end.`;
    return { kind: "problem", problem: { row, problem, fix: "Export the file again with one row a line." } };
  }

  private rowOf(cells: readonly string[], start: number, end: number): SourceItem | undefined {
    if (cells.length > mostColumns) return this.unread(start, end, tooWide);
    this.row++;
    this.at = this.afterBreak(end);
    return cells.some((cell) => cell.trim() !== "") ? { kind: "row", row: this.row, cells } : undefined;
  }

  /** End of the line that begins or goes on here; -1 where the text so far does not show it. */
  private lineEndFrom(from: number): number {
    const end = Math.min(this.place("feed", "\n", from), this.place("return", "\r", from));
    const known = end < this.text.length - 1 || (end < this.text.length && this.text.charCodeAt(end) === feed);
    return known || this.ended ? end : -1;
  }

  /** Next place of a character; the length of the text where there is none. */
  private place(name: keyof RowSplitter["places"], character: string, from: number): number {
    if (this.places[name] < from) {
      const found = this.text.indexOf(character, from);
      this.places[name] = found === -1 ? this.text.length : found;
    }
    return this.places[name];
  }

  private afterBreak(end: number): number {
    const pair = this.text.charCodeAt(end) === carriageReturn && this.text.charCodeAt(end + 1) === feed;
    return Math.min(end + (pair ? 2 : 1), this.text.length);
  }
}

interface Failure {
  readonly problem: FileProblem;
}
type Cell = { readonly text: string; readonly stop: number } | Failure;

const neverClosed: Failure = {
  problem: {
    problem: "A quotation mark is opened in this row and never closed.",
    fix: "Close it, or take it away. A quotation mark inside a cell is written twice.",
  },
};
const closedElsewhere: Failure = {
  problem: {
    problem: "A quotation mark is opened in this row, and the next one, on a later line, does not close it.",
    fix: 'Put the whole cell in quotation marks and write each one inside it twice: "a 3"" hose".',
  },
};

const tooWide: Failure = {
  problem: {
    problem: `This row has more than ${mostColumns} cells.`,
    fix: "Look whether the file has another delimiter, and whether its rows end where they should.",
  },
};

const swallowsRows: Failure = {
  problem: {
    problem:
      "A quotation mark is opened in this row and closed on a later line, with what look like whole rows between.",
    fix: "Close it in this row, or take it away.",
  },
};

const unsearched = { feed: -1, return: -1, quote: -1 };
/** Rows of fewer cells than this are too like a sentence with commas. */
const narrow = 6;
const feed = 0x0a;
const carriageReturn = 0x0d;
const space = 0x20;
const quote = 0x22;
const byteOrderMark = 0xfeff;
