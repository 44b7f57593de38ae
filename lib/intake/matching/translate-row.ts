// One row of somebody's file becomes rows of ours. Every cell is read by the column that it was matched to; what was not
// taken as it stood is noted, and what only a person can settle holds the row.
import { neededColumns, type TableKind } from "../file-kinds";
import type { IntakeSetting } from "../intake-setting";
import { type CellProblem, shownValue } from "../parsed";
import type { SourceRow } from "../tables/source-row";
import { type ColumnReading, columnReader } from "./column-reader";
import { currencyProblem } from "./currency-signs";
import type { KnownThings } from "./known-things";
import { leftOut } from "./left-out";
import type { Matching, TargetColumn } from "./matching";
import { nonRecord } from "./non-record";
import { offering } from "./offers";
import { OpenRow, type RowCells } from "./open-row";
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
  const { kind } = matching;
  const columns = compiled(matching, header, setting);
  const constants = Object.entries(matching.constants).map(([target, text]) => ({ ...fieldOf(kind, target), text }));
  const places = new Map(columns.map((column) => [column.target, column]));
  const withLine = kind === "jobs" && [...columns, ...constants].some((column) => column.kind === "part-lines");
  const blank = blankCells(kind, columns);
  const blankLine = blankCells("part-lines", columns);
  const ofJob = columns.filter(({ ofLine, column }) => !ofLine && column !== "job_number").map(({ column }) => column);
  const isNone = nonRecord(matching.columns, header);
  return (row) => {
    const reason = isNone(row.cells);
    if (reason !== undefined) return { kind: "refused", reason };
    const open = new OpenRow({ ...blank }, withLine ? { ...blankLine } : undefined, row.cells, places);
    if (row.cells.length > header.length) tooLong(row.cells, header.length, open);
    for (const column of columns) readCell(column, row, open, setting);
    for (const { kind: of, column, text } of constants) {
      const cells = of === kind ? open.own : open.line;
      if (cells !== undefined && (cells[column] ?? "") === "") cells[column] = text;
    }
    settleRow(open, kind);
    const ended = kind === "jobs" ? leftOut(open) : undefined;
    if (ended !== undefined) return { kind: "refused", reason: ended };
    const alone = kind === "jobs" && continues(open, ofJob);
    if (alone && (open.own.job_number ?? "").trim() === "") open.problems.push(belowItsJob(columns));
    if (open.problems.length > 0) return { kind: "held", problems: open.problems };
    if (alone && open.line !== undefined)
      return { kind: "rows", rows: [{ kind: "part-lines", cells: open.line }], notes: open.notes };
    const own = { kind, cells: open.own };
    return {
      kind: "rows",
      rows: open.line === undefined ? [own] : [own, { kind: "part-lines", cells: open.line }],
      notes: open.notes,
    };
  };
}

interface CompiledColumn {
  readonly place: number;
  readonly source: string;
  readonly target: TargetColumn;
  readonly kind: TableKind;
  readonly column: string;
  /** Of the part line in a row of jobs. */
  readonly ofLine: boolean;
  readonly read: ReturnType<typeof columnReader>;
  readonly offerFor: ReturnType<typeof offering>;
  /** Readings are remembered by their readers, so what is said of them is as well. */
  readonly notes: WeakMap<ColumnReading, CellNote>;
}

function compiled(
  matching: Matching,
  header: readonly string[],
  setting: TranslationSetting,
): readonly CompiledColumn[] {
  if (matching.columns.length !== header.length)
    throw new RangeError(`header: has ${header.length} columns, the matching ${matching.columns.length}`);
  return matching.columns.flatMap(({ source, target }, place) => {
    if (target === undefined) return [];
    const inMoney = target === "labour_minutes" && matching.labourUnit === "money";
    const field = fieldOf(matching.kind, inMoney ? "labour" : target);
    const { kind, column } = field;
    const read = columnReader(field, matching, setting);
    const offerFor = setting.known === undefined ? undefined : offering(column, setting.known);
    const ofLine = kind !== matching.kind;
    return [{ place, source, target, kind, column, ofLine, read, offerFor, notes: new WeakMap() }];
  });
}

function fieldOf(kind: TableKind, target: string) {
  const field = targetFields(kind).find((each) => each.target === target);
  if (field === undefined) throw new RangeError(`matching: ${target} is no column of ${kind}`);
  return field;
}

/** A blank cell for every column that is matched or needed, so that the parsers find what is missing by its name. */
function blankCells(kind: TableKind, columns: readonly CompiledColumn[]): RowCells {
  const matched = columns.filter((column) => column.kind === kind);
  const needed = neededColumns(kind).filter((column) => !leftToStorage.has(column) || kind !== "part-lines");
  return Object.fromEntries([...needed, ...matched.map(({ column }) => column)].map((column) => [column, ""]));
}

/** Lines of a job are numbered where they are stored, unless the file numbers them. */
const leftToStorage: ReadonlySet<string> = new Set(["line"]);

/** Cells beyond the header have no name, and mostly mean that a separator stands inside a cell, so all of the row is out of place. */
function tooLong(cells: readonly string[], columns: number, open: OpenRow): void {
  const place = cells.findIndex((cell, at) => at >= columns && cell.trim() !== "");
  if (place < 0) return;
  open.problems.push({
    column: "",
    value: shownValue(cells[place] ?? ""),
    problem: `stands in column ${place + 1}, and the header names ${columns}`,
    fix: "Look for a separator inside a cell that is not in quotation marks, and correct the row.",
  });
}

function readCell(
  compiledColumn: CompiledColumn,
  { cells, marks, merged }: SourceRow,
  open: OpenRow,
  setting: TranslationSetting,
): void {
  const { place, source, column, ofLine, read, offerFor } = compiledColumn;
  const raw = cells[place];
  if (raw === undefined || raw === "") return;
  const reading = read(raw, marks?.get(place));
  if (reading.kind === "held") {
    open.problems.push({ column: source, value: shownValue(raw), problem: reading.problem, fix: reading.fix });
    return;
  }
  const row = ofLine ? open.line : open.own;
  if (row === undefined) return;
  const { text } = reading;
  if (row[column] !== "" && text !== "") {
    open.problems.push(filledTwice(source, raw, column));
    return;
  }
  row[column] = text;
  if (reading.note !== undefined) open.notes.push(noteOf(compiledColumn, raw, reading));
  const range = merged?.get(place);
  if (range !== undefined) open.notes.push({ source, column, raw, taken: text, note: fromMerged(range) });
  if (reading.currency !== undefined)
    open.problems.push(...currencyProblem({ source, raw, sign: reading.currency, row, open, column }, setting));
  if (offerFor === undefined || text === "") return;
  const offer = offerFor(text);
  if (offer !== undefined)
    open.notes.push({ source, column, raw, taken: text, note: offer.note, offers: offer.numbers });
}

/** Whether a row of jobs holds a part and nothing of its job, except perhaps its number: the rest stands in another row. */
function continues({ own, line }: OpenRow, ofJob: readonly string[]): boolean {
  if (line === undefined || ofJob.length === 0) return false;
  return ofJob.every((column) => (own[column] ?? "").trim() === "");
}

function belowItsJob(columns: readonly CompiledColumn[]): CellProblem {
  const source = columns.find(({ target }) => target === "job_number")?.source ?? "job_number";
  return {
    column: source,
    value: "",
    problem:
      "is blank, and the row holds a part only: perhaps it continues the row above it, from cells that were merged",
    fix: "Write the number of the job that the part belongs to.",
  };
}

function fromMerged(range: string): string {
  return `Stands once in the merged cells ${range}, and is taken for each of their rows.`;
}

function filledTwice(source: string, raw: string, column: string): CellProblem {
  return {
    column: source,
    value: shownValue(raw),
    problem: `fills ${column}, which another column of this row fills too`,
    fix: "Say under Match columns which of the two is meant.",
  };
}

function noteOf(
  { source, column, notes }: CompiledColumn,
  raw: string,
  reading: ColumnReading & { readonly kind: "taken" },
): CellNote {
  const known = notes.get(reading);
  if (known !== undefined) return known;
  const note = { source, column, raw, taken: reading.text, note: reading.note ?? "" };
  const made: CellNote = reading.ordinary === undefined ? note : { ...note, ordinary: true };
  notes.set(reading, made);
  return made;
}
