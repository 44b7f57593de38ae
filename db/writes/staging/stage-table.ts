import { createHash } from "node:crypto";
import { copyLine } from "@/db/copy-line";
import type { StoredSource } from "@/db/schema/intake";
import type { FileKind, TableKind } from "@/lib/intake/file-kinds";
import type { IntakeSetting } from "@/lib/intake/intake-setting";
import type { Translation } from "@/lib/intake/matching/translation";
import { neverCompleted, neverCompletedReason } from "@/lib/intake/never-completed";
import { type CellProblem, type FileProblem, shownValue } from "@/lib/intake/parsed";
import type { SourceItem, SourceRow } from "@/lib/intake/tables/source-row";
import { stagedKindOf } from "../kinds/staged-kind-of";
import type { LoadWatch } from "../load-result";
import { CopyChannel } from "./copy-channel";
import { namedCells } from "./named-cells";
import { shownJson, visible } from "./shown-json";
import { stagedRowColumns } from "./staged-file";
import type { StagedRows, StagedValue } from "./staged-kind";
import { type Staging, stagingColumns } from "./staging-table";

export interface TableStage extends LoadWatch {
  readonly staging: Staging;
  /** What the file is loaded as: problems of other kinds name their columns with the kind. */
  readonly main: FileKind;
  /** Names of the file's columns, in its order. */
  readonly header: readonly string[];
  readonly headers: StagedRows["headers"];
  /** A row may lack a column that another has. */
  readonly sparse: boolean;
  readonly translate: (row: SourceRow) => Translation;
  readonly setting: IntakeSetting;
  readonly folder: string;
  readonly timeoutSeconds: number;
}

export interface StagedTable {
  readonly rows: number;
  readonly problem: FileProblem | undefined;
  /** Staging table of the file's rows, and of each kind of record that they held. */
  readonly table: string;
  readonly parts: ReadonlyMap<TableKind, string>;
}

const rowColumns = stagedRowColumns.map((column) => column.split(" ")[0] ?? "");
const reportedEvery = 500;

/** Translates row by row into staging: one table for the rows as they stand, and one for each kind of record in them. */
export async function stageTable(stage: TableStage, source: AsyncIterable<SourceItem>): Promise<StagedTable> {
  const table = await stage.staging.create(stagedRowColumns);
  const channels = new Map<TableKind | "", CopyChannel>();
  const parts = new Map<TableKind, string>();
  channels.set("", new CopyChannel({ table, columns: rowColumns }, stage.timeoutSeconds));
  const channelOf = async (name: TableKind | "") => {
    const open = channels.get(name);
    if (open !== undefined || name === "") return open as CopyChannel; // the rows' own channel is there from the start
    const kind = stagedKindOf(name);
    const partTable = await stage.staging.create(stagingColumns(kind));
    const columns = ["row", "cells", "problems", "readable", ...kind.columns.map((column) => column.name)];
    const channel = new CopyChannel({ table: partTable, columns }, stage.timeoutSeconds);
    parts.set(name, partTable);
    channels.set(name, channel);
    return channel;
  };
  let rows = 0;
  let problem: FileProblem | undefined;
  try {
    for await (const item of source) {
      if (item.kind === "problem") {
        problem = item.problem;
        break;
      }
      const lines = item.kind === "unread" ? [unreadLine(item)] : await linesOf(stage, item);
      for (const [name, line] of lines) await (await channelOf(name)).write(line);
      if (++rows % reportedEvery !== 0) continue;
      stage.signal?.throwIfAborted();
      stage.onProgress?.(rows, "reading");
    }
    for (const channel of channels.values()) await channel.close();
  } catch (error) {
    for (const channel of channels.values()) await channel.abandon();
    throw error;
  }
  stage.onProgress?.(rows, "reading");
  return { rows, problem, table, parts };
}

/** A row that could not be split is held as its text. */
function unreadLine({ row, raw, problem: { problem, fix } }: SourceItem & { kind: "unread" }): Line {
  const cells = shownJson({ "": raw });
  const problems = shownJson([{ column: "", value: shownValue(raw), problem, fix }]);
  return ["", copyLine([row, null, cells, shownJson({ cells: [raw] }), problems, null, null, null])];
}

type Line = readonly [channel: TableKind | "", line: string];

async function linesOf(stage: TableStage, row: SourceRow): Promise<readonly Line[]> {
  const translation = stage.translate(row);
  switch (translation.kind) {
    case "refused":
      return [["", rowLine(stage, row, { reason: translation.reason })]];
    case "held":
      return [["", rowLine(stage, row, { problems: translation.problems })]];
    case "rows":
      return await recordLines(stage, row, translation);
  }
}

async function recordLines(
  stage: TableStage,
  row: SourceRow,
  { rows, notes }: Translation & { kind: "rows" },
): Promise<readonly Line[]> {
  if (rows.length === 0)
    return [["", rowLine(stage, row, { reason: "None of the columns that are matched holds anything." })]];
  if (new Set(rows.map(({ kind }) => kind)).size < rows.length)
    throw new RangeError(`translate: row ${row.row} gives two records of one kind`);
  const read: { name: TableKind; cells: string | null; values: readonly StagedValue[] }[] = [];
  const problems: CellProblem[] = [];
  for (const { kind: name, cells } of rows) {
    const kind = stagedKindOf(name);
    const parsed = await kind.read(cells, stage.setting, stage.folder);
    if (parsed.ok) read.push({ name, cells: stage.sparse ? shownJson(cells) : null, values: parsed.value });
    else problems.push(...parsed.problems.map((problem) => asInFile(stage, row, name, problem)));
  }
  if (problems.length > 0) return [["", rowLine(stage, row, leftOutOrHeld(rows, problems, notes))]];
  return [
    ["", rowLine(stage, row, { notes })],
    ...read.map(
      ({ name, cells, values }): Line => [
        name,
        copyLine([row.row, cells, null, true, ...values.map((value) => value ?? null)]),
      ],
    ),
  ];
}

/** A job that came to nothing and was never completed needs nothing put right. */
function leftOutOrHeld(
  rows: (Translation & { kind: "rows" })["rows"],
  problems: readonly CellProblem[],
  notes: readonly unknown[],
) {
  const job = rows.find(({ kind }) => kind === "jobs");
  const status = job === undefined ? undefined : neverCompleted(job.cells);
  return status === undefined ? { problems, notes } : { reason: neverCompletedReason(status) };
}

/** A problem of a column of ours, told by the file's own column and cell where it has one for it. */
function asInFile(stage: TableStage, row: SourceRow, kind: TableKind, problem: CellProblem): CellProblem {
  const header = stage.headers[`${kind}.${problem.column}`];
  if (header === undefined)
    return kind === stage.main || problem.column === "" ? problem : { ...problem, column: `${kind}.${problem.column}` };
  return { ...problem, column: header, value: shownValue(row.cells[stage.header.indexOf(header)] ?? "") };
}

/** A row that may go in is told by its number; what stands in it can be read again. */
function rowLine(
  { header }: TableStage,
  { row, cells, marks }: SourceRow,
  { problems, reason, notes = [] }: { problems?: readonly CellProblem[]; reason?: string; notes?: readonly unknown[] },
): string {
  const source: StoredSource = { cells, ...(marks === undefined ? {} : { marks: [...marks] }) };
  const bare = problems === undefined && reason === undefined;
  return copyLine([
    row,
    printOf(cells),
    bare ? null : shownJson(namedCells(header, cells)),
    bare ? null : shownJson(source),
    problems === undefined ? null : shownJson(problems),
    reason === undefined ? null : visible(reason),
    notes.length === 0 ? null : shownJson(notes),
    null,
  ]);
}

/** By which rows that are equal word for word are known; those of thousands of lines are not kept to be compared. */
function printOf(cells: readonly string[]): string {
  return createHash("sha256")
    .update(`${cells.map(({ length }) => length)} ${cells.join("")}`)
    .digest("base64");
}
