import { createWriteStream } from "node:fs";
import { Readable } from "node:stream";
import { pipeline } from "node:stream/promises";
import { type CsvCell, csvLine, csvText } from "@/lib/format/csv-text";
import type { RowProblem } from "@/lib/intake/parsed";
import { readRows } from "@/lib/intake/tables/read-rows";
import type { TableForm } from "@/lib/intake/tables/table-form";

interface Report {
  readonly path: string;
  readonly form: TableForm;
  readonly header: readonly string[];
  readonly problems: readonly RowProblem[];
}

/** Every row with a problem as it stands in the file, and beside it where it is, what is wrong and what to do. */
export async function writeReport(target: string, { path, form, header, problems }: Report): Promise<void> {
  const byRow = new Map<number, RowProblem[]>();
  for (const problem of problems) byRow.set(problem.row, [...(byRow.get(problem.row) ?? []), problem]);
  const heads = [...header, ...reportColumns];
  async function* lines(): AsyncGenerator<string> {
    yield csvText(heads, []);
    for await (const item of readRows(path, form)) {
      if (item.kind === "problem") continue;
      const found = byRow.get(item.row);
      if (found === undefined) continue;
      const cells = item.kind === "row" ? item.cells : [item.raw];
      yield csvLine([...header.map((_, place) => cells[place] ?? ""), ...reportCells(item.row, found)]);
    }
  }
  await pipeline(Readable.from(lines()), createWriteStream(target, { mode: 0o600 }));
}

const reportColumns = ["row", "column", "problem", "suggestion"] as const;

/** One line a row, however much is wrong with it: the corrected report can be loaded as it is. */
function reportCells(row: number, problems: readonly Omit<RowProblem, "row">[]): readonly CsvCell[] {
  return [
    row,
    problems.map(({ column }) => column || "the whole row").join("; "),
    problems.map(({ problem }) => problem).join("; "),
    problems.map(({ fix }) => fix).join(" "),
  ];
}
