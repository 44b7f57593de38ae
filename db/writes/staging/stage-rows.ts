import { copyInto } from "@/db/copy-into";
import { copyLine } from "@/db/copy-line";
import type { IntakeSetting } from "@/lib/intake/intake-setting";
import type { CellProblem, FileProblem } from "@/lib/intake/parsed";
import type { Cells } from "@/lib/intake/row-problems";
import { shownJson } from "./shown-json";
import type { StagedKind, StagedValue } from "./staged-kind";

/** A row of a table, or a part of a document: what it says, and how it would be shown if it had to be held. */
export interface SourceRow {
  readonly row: number;
  readonly cells: Cells;
  /** Wrong with the row as such, such as a cell too many. */
  readonly problem?: CellProblem;
  /** What the kind's parser gets, where it is not the cells. */
  readonly document?: unknown;
}

/** The end of a file that cannot be read to its end. */
export interface SourceEnd {
  readonly end: FileProblem;
}

export type StageResult = { readonly rows: number; readonly problem: FileProblem | undefined };

export interface Stage {
  readonly kind: StagedKind;
  readonly table: string;
  readonly setting: IntakeSetting;
  readonly folder: string;
  readonly timeoutSeconds: number;
}

const chunkCharacters = 1 << 16;

/** Reads row by row into the staging table; memory does not grow with the file. */
export async function stageRows(stage: Stage, source: AsyncIterable<SourceRow | SourceEnd>): Promise<StageResult> {
  const result: { rows: number; problem: FileProblem | undefined } = { rows: 0, problem: undefined };
  const columns = ["row", "cells", "problems", "readable", ...stage.kind.columns.map(({ name }) => name)];
  async function* chunks(): AsyncGenerator<string> {
    let chunk = "";
    for await (const item of source) {
      if ("end" in item) {
        result.problem = item.end;
        return;
      }
      chunk += copyLine((await stagedRow(stage, item)).map((value) => value ?? null));
      result.rows++;
      if (chunk.length < chunkCharacters) continue;
      yield chunk;
      chunk = "";
    }
    if (chunk !== "") yield chunk;
  }
  await copyInto({ table: stage.table, columns }, chunks(), { timeoutSeconds: stage.timeoutSeconds });
  return result;
}

/** What is staged of a row: its number, cells, problems, whether it could be read, and what the kind reads in it. */
export async function stagedRow(
  { kind, setting, folder }: Stage,
  source: SourceRow,
): Promise<readonly (StagedValue | null)[]> {
  const { row, cells, problem } = source;
  const shown = shownJson(cells);
  const held = (problems: readonly CellProblem[]) => [
    row,
    shown,
    shownJson(problems),
    false,
    ...kind.columns.map(() => null),
  ];
  if (problem !== undefined) return held([problem]);
  const read = await kind.read((source.document ?? cells) as Cells, setting, folder); // a document goes to the parser of its own kind
  return read.ok ? [row, shown, null, true, ...read.value] : held(read.problems);
}
