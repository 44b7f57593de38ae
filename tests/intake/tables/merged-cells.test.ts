// Merged cells of a workbook, built by the words of ECMA-376 part 1, 18.3.1.54 and 18.3.1.55: listed below the cells.
import { expect, test } from "vitest";
import { translated } from "../matching/full-setting";
import { fileOf, itemsOf, lookAt } from "./table-files";
import { workbookParts, zipFile } from "./zip-file";

const text = (reference: string, value: string) => `<c r="${reference}" t="inlineStr"><is><t>${value}</t></is></c>`;
const line = (row: number, ...cells: readonly (readonly [string, string])[]) =>
  `<row r="${row}">${cells.map(([letter, value]) => text(`${letter}${row}`, value)).join("")}</row>`;

function merged(rows: readonly string[], ...ranges: readonly string[]): string {
  const list = ranges.map((range) => `<mergeCell ref="${range}"/>`).join("");
  const end = `</sheetData><mergeCells count="${ranges.length}">${list}</mergeCells><sheetData>`;
  return fileOf(zipFile(workbookParts({ rows: `${rows.join("")}${end}` })));
}

const header = line(1, ["A", "Job"], ["B", "Done"], ["C", "Part"]);
const sheet = [
  header,
  line(2, ["A", "J-1"], ["B", "2024-03-01"], ["C", "P-1"]),
  line(3, ["C", "P-2"]),
  `<row r="4"/>`,
  line(5, ["B", "2024-03-09"], ["C", "P-3"]),
  line(6, ["C", "P-4"]),
];

test("what merged cells hold is taken for each of their rows that says anything, and named", async () => {
  const items = await itemsOf(merged(sheet, "A2:A5", "B2:B5"), { headerRow: 1 });
  expect(items.map((item) => item.kind === "row" && [item.row, item.cells])).toEqual([
    [2, ["J-1", "2024-03-01", "P-1"]],
    [3, ["J-1", "2024-03-01", "P-2"]],
    [5, ["J-1", "2024-03-09", "P-3"]],
    [6, ["", "", "P-4"]],
  ]);
  expect(items.map((item) => item.kind === "row" && item.merged && [...item.merged])).toEqual([
    undefined,
    [
      [0, "A2:A5"],
      [1, "B2:B5"],
    ],
    [[0, "A2:A5"]],
    undefined,
  ]);
});

test("cells merged over columns stay as they are, and the lower line of a header has the names that are merged with it", async () => {
  const rows = [
    line(1, ["A", "Repairs of the year"]),
    line(2, ["A", "Job"], ["B", "Days"]),
    line(3, ["B", "Called"], ["C", "Done"]),
    line(4, ["A", "J-1"], ["B", "2024-03-01"], ["C", "2024-03-02"]),
    line(5, ["A", "J-2"], ["B", "2024-03-01"], ["C", "2024-03-02"]),
  ];
  const look = await lookAt(merged(rows, "A1:C1", "A2:A3", "B2:C2"), { headerRow: 3 });
  expect(look.header).toEqual(["Job", "Called", "Done"]);
});

test("a cell that was filled from merged ones has a note", () => {
  const translation = translated(
    { job_number: "J1", maker: "Hearth-Wick", completed_on: "2025-03-09" },
    { merged: new Map([[0, "A2:A5"]]) },
  );
  expect(translation.kind === "rows" && translation.notes.map(({ source, note }) => `${source}: ${note}`)).toEqual([
    "Their job_number: Stands once in the merged cells A2:A5, and is taken for each of their rows.",
  ]);
});

test("merges in any number cost no more than their list", async () => {
  const ranges = Array.from({ length: 50_000 }, (_, at) => `A${at * 2 + 2}:A${at * 2 + 3}`);
  expect(await itemsOf(merged(sheet, ...ranges), { headerRow: 1 })).toHaveLength(4);
});
