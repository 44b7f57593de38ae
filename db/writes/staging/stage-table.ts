import type { FileKind, TableKind } from "@/lib/intake/file-kinds";
import type { IntakeSetting } from "@/lib/intake/intake-setting";
import type { Translation } from "@/lib/intake/matching/translation";
import type { FileProblem } from "@/lib/intake/parsed";
import type { SourceItem, SourceRow } from "@/lib/intake/tables/source-row";
import { stagedKindOf } from "../kinds/staged-kind-of";
import type { LoadWatch } from "../load-result";
import { CopyChannel } from "./copy-channel";
import { rowOutcome } from "./row-outcome";
import { rowWriter } from "./row-writer";
import { stagedRowColumns } from "./staged-file";
import type { StagedRows } from "./staged-kind";
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
  const rowsChannel = new CopyChannel({ table, columns: rowColumns }, stage.timeoutSeconds);
  const channels = new Map<TableKind, CopyChannel>();
  const parts = new Map<TableKind, string>();
  const opened = async (name: TableKind) => {
    const kind = stagedKindOf(name);
    const partTable = await stage.staging.create(stagingColumns(kind));
    const columns = ["row", "cells", "problems", "readable", ...kind.columns.map((column) => column.name)];
    const channel = new CopyChannel({ table: partTable, columns }, stage.timeoutSeconds);
    parts.set(name, partTable);
    channels.set(name, channel);
    return channel;
  };
  const write = rowWriter(stage);
  let rows = 0;
  let problem: FileProblem | undefined;
  try {
    for await (const item of source) {
      if (item.kind === "problem") {
        problem = item.problem;
        break;
      }
      if (item.kind === "unread") write.unread(rowsChannel.rows, item);
      else {
        const coming = rowOutcome(stage, item);
        const outcome = coming instanceof Promise ? await coming : coming;
        write.row(rowsChannel.rows, item, outcome);
        for (const record of outcome.records) {
          const channel = channels.get(record.kind) ?? (await opened(record.kind));
          write.record(channel.rows, item.row, record);
          if (channel.isFull) await channel.send();
        }
      }
      if (rowsChannel.isFull) await rowsChannel.send();
      if (++rows % reportedEvery !== 0) continue;
      stage.signal?.throwIfAborted();
      stage.onProgress?.(rows, "reading");
    }
    for (const channel of [rowsChannel, ...channels.values()]) await channel.close();
  } catch (error) {
    for (const channel of [rowsChannel, ...channels.values()]) await channel.abandon();
    throw error;
  }
  stage.onProgress?.(rows, "reading");
  return { rows, problem, table, parts };
}
