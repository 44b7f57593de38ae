// One row of somebody's file becomes rows of ours. Every cell is read by the column that it was matched to; what was not
// taken as it stood is noted, and what only a person can settle holds the row.
import { neededColumns, type TableKind } from "../file-kinds";
import type { IntakeSetting } from "../intake-setting";
import { type CellProblem, shownValue } from "../parsed";
import type { SourceRow } from "../tables/source-row";
import { columnReader } from "./column-reader";
import { currencyProblem } from "./currency-signs";
import type { KnownThings } from "./known-things";
import type { Matching } from "./matching";
import { nonRecord } from "./non-record";
import { offerFor } from "./offers";
import type { OpenRow } from "./open-row";
import { settleRow } from "./settle-row";
import { targetFields } from "./target-fields";
import type { CellNote, Translation } from "./translation";

export interface TranslationSetting extends IntakeSetting {
  /** What is on file, for offers; left out where nothing is to be offered. */
  readonly known?: KnownThings | undefined;
}

/**
 * Compiles a matching once; the function that comes out reads row after row.
 * @throws RangeError where the matching belongs to another header or names a column that is none
 */
export function translator(
  matching: Matching,
  header: readonly string[],
  setting: TranslationSetting,
): (row: SourceRow) => Translation {
  const columns = compiled(matching, header, setting);
  const blank = blankRows(matching, columns);
  const constants = Object.entries(matching.constants).map(([target, text]) => ({
    ...fieldOf(matching.kind, target),
    text,
  }));
  const isNone = nonRecord(matching.columns, header);
  return (row) => {
    const reason = isNone(row.cells);
    if (reason !== undefined) return { kind: "refused", reason };
    const cells = new Map(blank.map(([kind, row]) => [kind, { ...row }]));
    const open: OpenRow = { cells, notes: [], problems: [], sources: new Map() };
    tooLong(row.cells, header.length, open);
    for (const column of columns) readCell(column, row, open, setting);
    for (const { kind, column, text } of constants) {
      const cells = cellsOf(open, kind);
      if ((cells[column] ?? "") === "") cells[column] = text;
    }
    settleRow(open, matching.kind);
    if (open.problems.length > 0) return { kind: "held", problems: open.problems };
    return { kind: "rows", rows: [...open.cells].map(([kind, cells]) => ({ kind, cells })), notes: open.notes };
  };
}

/** A blank cell for every column that is matched or needed, so that the parsers find what is missing by its name. */
function blankRows(
  matching: Matching,
  columns: readonly CompiledColumn[],
): readonly (readonly [TableKind, Record<string, string>])[] {
  const kinds = [...new Set([matching.kind, ...columns.map(({ kind }) => kind)])];
  return kinds.map((kind) => {
    const matched = columns.filter((column) => column.kind === kind).map(({ column }) => column);
    const needed = neededColumns(kind).filter((column) => kind === matching.kind || !leftToStorage.has(column));
    return [kind, Object.fromEntries([...needed, ...matched].map((column) => [column, ""]))];
  });
}

/** Lines of a part that stands in a row of jobs are numbered where they are stored. */
const leftToStorage: ReadonlySet<string> = new Set(["line"]);

interface CompiledColumn {
  readonly place: number;
  readonly source: string;
  readonly kind: TableKind;
  readonly column: string;
  readonly read: ReturnType<typeof columnReader>;
}

function compiled(matching: Matching, header: readonly string[], setting: IntakeSetting): readonly CompiledColumn[] {
  if (matching.columns.length !== header.length)
    throw new RangeError(`header: has ${header.length} columns, the matching ${matching.columns.length}`);
  return matching.columns.flatMap(({ source, target }, place) => {
    if (target === undefined) return [];
    const inMoney = target === "labour_minutes" && matching.labourUnit === "money";
    const field = fieldOf(matching.kind, inMoney ? "labour" : target);
    return [{ place, source, kind: field.kind, column: field.column, read: columnReader(field, matching, setting) }];
  });
}

function fieldOf(kind: TableKind, target: string) {
  const field = targetFields(kind).find((each) => each.target === target);
  if (field === undefined) throw new RangeError(`matching: ${target} is no column of ${kind}`);
  return field;
}

/** Cells beyond the header have no name, and mostly mean that a separator stands inside a cell, so all of the row is out of place. */
function tooLong(cells: readonly string[], columns: number, open: OpenRow): void {
  for (let place = columns; place < cells.length; place++) {
    const cell = cells[place] ?? "";
    if (cell.trim() === "") continue;
    open.problems.push({
      column: "",
      value: shownValue(cell),
      problem: `stands in column ${place + 1}, and the header names ${columns}`,
      fix: "Look for a separator inside a cell that is not in quotation marks, and correct the row.",
    });
    return;
  }
}

function readCell(
  { place, source, kind, column, read }: CompiledColumn,
  { cells, marks }: SourceRow,
  open: OpenRow,
  setting: TranslationSetting,
): void {
  const raw = cells[place];
  if (raw === undefined || raw === "") return;
  const reading = read(raw, marks?.get(place));
  if (reading.kind === "held") {
    open.problems.push({ column: source, value: shownValue(raw), problem: reading.problem, fix: reading.fix });
    return;
  }
  const row = cellsOf(open, kind);
  const { text, note } = reading;
  if (row[column] !== undefined && row[column] !== "" && text !== "") {
    open.problems.push(filledTwice(source, raw, column));
    return;
  }
  row[column] = text;
  open.sources.set(`${kind}.${column}`, { source, raw });
  if (note !== undefined) open.notes.push(noteOf({ source, column, raw, taken: text, note }, reading.ordinary));
  if (reading.currency !== undefined)
    open.problems.push(...currencyProblem({ source, raw, sign: reading.currency, row, open, column }, setting));
  if (setting.known === undefined || text === "") return;
  const offer = offerFor(column, text, setting.known);
  if (offer !== undefined) open.notes.push({ source, column, raw, taken: text, note: offer });
}

function cellsOf(open: OpenRow, kind: TableKind): Record<string, string> {
  const known = open.cells.get(kind);
  if (known !== undefined) return known;
  const fresh: Record<string, string> = {};
  open.cells.set(kind, fresh);
  return fresh;
}

function filledTwice(source: string, raw: string, column: string): CellProblem {
  return {
    column: source,
    value: shownValue(raw),
    problem: `fills ${column}, which another column of this row fills too`,
    fix: "Say under Match columns which of the two is meant.",
  };
}

function noteOf(note: CellNote, ordinary: true | undefined): CellNote {
  return ordinary === undefined ? note : { ...note, ordinary };
}
