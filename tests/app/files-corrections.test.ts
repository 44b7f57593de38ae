import { expect, test } from "vitest";
import { correctRow } from "@/app/files/_draft/correct-row";
import { correctionsWith } from "@/app/files/_draft/corrections";

const header = ["Job", "Date"];

test("a corrected cell is read as it was written, and its raw text is noted", () => {
  const { corrected, notes } = correctRow({ row: 9, cells: ["X-1", "31-Feb-26"] }, header, [
    { column: "Date", text: "28-Feb-26", rows: [9] },
  ]);
  expect(corrected.cells).toEqual(["X-1", "28-Feb-26"]);
  expect(notes).toMatchObject([{ source: "Date", raw: "31-Feb-26", taken: "28-Feb-26" }]);
});

test("a correction loses the mark of a spreadsheet cell, touches no other row, and fills a row that is too short", () => {
  const mark = { kind: "number", stored: "45717" } as const;
  const short = correctRow({ row: 3, cells: ["X-2"], marks: new Map([[1, mark]]) }, header, [
    { column: "Date", text: "1-Mar-26", rows: [3] },
  ]);
  expect(short.corrected.cells).toEqual(["X-2", "1-Mar-26"]);
  expect(short.corrected.marks?.has(1)).toBe(false);
  const other = { row: 4, cells: ["X-3", "x"] };
  expect(correctRow(other, header, [{ column: "Date", text: "y", rows: [3] }])).toEqual({
    corrected: other,
    notes: [],
  });
});

test("of two corrections of one cell the latest holds, and the other rows keep the first", () => {
  const first = { column: "Date", text: "a", rows: [3, 4] };
  const second = { column: "Date", text: "b", rows: [4] };
  const elsewhere = { column: "Job", text: "c", rows: [4] };
  expect(correctionsWith([first, elsewhere], second)).toEqual([{ ...first, rows: [3] }, elsewhere, second]);
  expect(correctionsWith([second], { ...second, text: "d" })).toEqual([{ ...second, text: "d" }]);
});
