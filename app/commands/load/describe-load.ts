import type { LoadReport, LoadResult } from "@/db/writes/load-result";
import type { FileProblem, RowProblem } from "@/lib/intake/parsed";
import { printable } from "./printable";

/** Rows with problems that are printed; the page Files in lists all. */
export const shownProblems = 20;

/** What came of one file, in lines for a terminal. */
export function describeLoad(path: string, result: LoadResult): string {
  switch (result.kind) {
    case "unreadable":
      return [`${path}: refused. Nothing was added.`, ...result.problems.map(describeFileProblem)].join("\n");
    case "loaded before":
      return `${path}: you loaded this file on ${result.addedAt.slice(0, 10)} as load ${result.batchId}; all ${result.rows} rows are here. Nothing was changed.`;
    case "checked":
      return [`${path}: checked, ${counts(result.report)}. Nothing was added.`, ...problems(result.report)].join("\n");
    case "refused":
      return [
        `${path}: refused, ${counts(result.report)}. Nothing was added.`,
        ...problems(result.report),
        "Correct these rows, or add --set-aside to load the good rows and keep these aside.",
      ].join("\n");
    case "added":
      return [`${path}: added as load ${result.batchId}, ${counts(result.report)}.`, ...problems(result.report)].join(
        "\n",
      );
  }
}

/** Whether the sender has something to put right. */
export function isRefusal(result: LoadResult): boolean {
  return (
    result.kind === "unreadable" ||
    result.kind === "refused" ||
    (result.kind === "checked" && result.report.rowsHeld > 0)
  );
}

function counts({ fileKind, rowsTotal, rowsNew, rowsChanged, rowsSame, rowsHeld, rowsRefused }: LoadReport): string {
  return `${rowsTotal} rows of ${fileKind}: ${rowsNew} new, ${rowsChanged} changed, ${rowsSame} already here, ${rowsHeld} with problems${rowsRefused > 0 ? `, ${rowsRefused} left out` : ""}`;
}

function problems({ problems: found, rowsHeld }: LoadReport): readonly string[] {
  const shown = found.map(rowProblem);
  const rows = new Set(found.map(({ row }) => row)).size;
  return rows < rowsHeld ? [...shown, `  … and ${rowsHeld - rows} more rows with problems.`] : shown;
}

function rowProblem({ row, column, value, problem, fix }: RowProblem): string {
  const cell = column === "" ? "the row" : `${column}${value === "" ? "" : ` "${value}"`}`;
  return `  row ${row}: ${printable(cell)} ${printable(problem)}. ${printable(fix)}`;
}

export function describeFileProblem({ row, problem, fix }: FileProblem): string {
  return `  ${row === undefined ? "" : `row ${row}: `}${printable(problem)} ${printable(fix)}`;
}
