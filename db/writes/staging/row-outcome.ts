import type { TableKind } from "@/lib/intake/file-kinds";
import type { Translation } from "@/lib/intake/matching/translation";
import { neverCompleted, neverCompletedReason } from "@/lib/intake/never-completed";
import { type CellProblem, type Parsed, shownValue } from "@/lib/intake/parsed";
import type { Cells } from "@/lib/intake/row-problems";
import type { SourceRow } from "@/lib/intake/tables/source-row";
import { stagedKindOf } from "../kinds/staged-kind-of";
import type { TableStage } from "./stage-table";
import type { StagedValue } from "./staged-kind";

/** What comes of a row of the file: the records in it, or why there are none. */
export interface RowOutcome {
  readonly records: readonly StagedRecord[];
  readonly problems?: readonly CellProblem[];
  readonly reason?: string;
  readonly notes?: readonly unknown[];
}

export interface StagedRecord {
  readonly kind: TableKind;
  readonly cells: Cells;
  readonly values: readonly StagedValue[];
}

type Records = Translation & { readonly kind: "rows" };
type Read = Parsed<readonly StagedValue[]>;

/** A promise only where the row has to be waited for, as one with a picture: waiting for each would cost more than reading it. */
export function rowOutcome(stage: TableStage, row: SourceRow): RowOutcome | Promise<RowOutcome> {
  const translation = stage.translate(row);
  if (translation.kind === "refused") return { records: [], reason: translation.reason };
  if (translation.kind === "held") return { records: [], problems: translation.problems };
  const { rows } = translation;
  if (rows.length === 0) return { records: [], reason: "None of the columns that are matched holds anything." };
  if (rows.some(({ kind }, index) => rows.findIndex((other) => other.kind === kind) < index))
    throw new RangeError(`translate: row ${row.row} gives two records of one kind`);
  const read = rows.map(({ kind, cells }) => stagedKindOf(kind).read(cells, stage.setting, stage.folder));
  if (read.every(isThere)) return outcomeOf(stage, row, translation, read);
  return Promise.all(read).then((all) => outcomeOf(stage, row, translation, all));
}

function isThere(read: Read | Promise<Read>): read is Read {
  return !(read instanceof Promise);
}

function outcomeOf(stage: TableStage, row: SourceRow, { rows, notes }: Records, read: readonly Read[]): RowOutcome {
  const records: StagedRecord[] = [];
  const problems: CellProblem[] = [];
  for (const [index, { kind, cells }] of rows.entries()) {
    const each = read[index];
    if (each?.ok) records.push({ kind, cells, values: each.value });
    else for (const problem of each?.problems ?? []) problems.push(asInFile(stage, row, kind, problem));
  }
  return problems.length > 0 ? leftOutOrHeld(rows, problems, notes) : { records, notes };
}

/** A job that came to nothing and was never completed needs nothing put right. */
function leftOutOrHeld(rows: Records["rows"], problems: readonly CellProblem[], notes: Records["notes"]): RowOutcome {
  const job = rows.find(({ kind }) => kind === "jobs");
  const status = job === undefined ? undefined : neverCompleted(job.cells);
  return status === undefined
    ? { records: [], problems, notes }
    : { records: [], reason: neverCompletedReason(status) };
}

/** A problem of a column of ours, told by the file's own column and cell where it has one for it. */
function asInFile(stage: TableStage, row: SourceRow, kind: TableKind, problem: CellProblem): CellProblem {
  const header = stage.headers[`${kind}.${problem.column}`];
  if (header === undefined)
    return kind === stage.main || problem.column === "" ? problem : { ...problem, column: `${kind}.${problem.column}` };
  return { ...problem, column: header, value: shownValue(row.cells[stage.header.indexOf(header)] ?? "") };
}
