import { hash } from "node:crypto";
import { copyField } from "@/db/copy-field";
import { shownValue } from "@/lib/intake/parsed";
import type { SourceItem, SourceRow } from "@/lib/intake/tables/source-row";
import type { CopyBytes } from "./copy-bytes";
import { namedCells } from "./named-cells";
import type { RowOutcome, StagedRecord } from "./row-outcome";
import { shownJson, visible } from "./shown-json";
import type { TableStage } from "./stage-table";
import { storedSource } from "./stored-source";

/** Writes the rows of one file into staging, and the records that were read in them. */
export function rowWriter({ header, sparse }: Pick<TableStage, "header" | "sparse">) {
  return {
    /** A row that may go in is told by its number; what stands in it can be read again. */
    row(bytes: CopyBytes, row: SourceRow, outcome: RowOutcome): void {
      const bare = outcome.problems === undefined && outcome.reason === undefined;
      const fields = bare ? `${none}\t${none}` : sourceFields(header, row);
      bytes.text(`${row.row}\t${printOf(row.cells)}\t${fields}\t${said(outcome)}`);
    },

    /** A row that could not be split is held as its text. */
    unread(bytes: CopyBytes, { row, raw, problem: { problem, fix } }: SourceItem & { kind: "unread" }): void {
      const fields = `${jsonField({ "": raw })}\t${jsonField({ cells: [raw] })}`;
      const problems = [{ column: "", value: shownValue(raw), problem, fix }];
      bytes.text(`${row}\t${none}\t${fields}\t${said({ records: [], problems })}`);
    },

    record(bytes: CopyBytes, row: number, { cells, values }: StagedRecord): void {
      bytes.text(`${row}\t${sparse ? jsonField(cells) : none}\t${none}\ttrue`);
      for (const value of values) {
        bytes.byte(tab);
        bytes.value(value ?? null);
      }
      bytes.byte(lineEnd);
    },
  };
}

/** By which rows that are equal word for word are known; those of thousands of lines are not kept to be compared. */
function printOf(cells: readonly string[]): string {
  return hash("sha256", `${cells.map(({ length }) => length)} ${cells.join("")}`, "base64");
}

function sourceFields(header: readonly string[], row: SourceRow): string {
  return `${jsonField(namedCells(header, row.cells))}\t${jsonField(storedSource(row))}`;
}

function said({ problems, reason, notes = [] }: RowOutcome): string {
  const held = problems === undefined ? none : jsonField(problems);
  const refused = reason === undefined ? none : copyField(visible(reason));
  const noted = notes.length === 0 ? none : jsonField(notes);
  return `${held}\t${refused}\t${noted}\t${none}\n`;
}

function jsonField(value: unknown): string {
  return copyField(shownJson(value));
}

const none = copyField(null);
const [tab, lineEnd] = [0x09, 0x0a];
