import { expect, test } from "vitest";
import { alikeProblems, kindKey, kindsOfProblems, rowsInWords } from "@/app/files/_components/alike-problems";
import type { RowProblem } from "@/lib/intake/parsed";

const wrong = (row: number, column: string, value: string, problem: string): RowProblem => ({
  row,
  column,
  value,
  problem,
  fix: "Correct it.",
});

test("rows with the same trouble and the same value are one group, in the order of the file", () => {
  const groups = alikeProblems([
    wrong(3, "symptom", "wont drain", "is not a symptom"),
    wrong(4, "completed_on", "31-Feb-26", "is no day of the calendar"),
    wrong(9, "symptom", "wont drain", "is not a symptom"),
    wrong(9, "symptom", "leak", "is not a symptom"),
  ]);
  expect(groups.map(({ column, value, rows }) => [column, value, rows])).toEqual([
    ["symptom", "wont drain", [3, 9]],
    ["completed_on", "31-Feb-26", [4]],
    ["symptom", "leak", [9]],
  ]);
});

test("a row that is named twice for the same trouble counts once", () => {
  expect(alikeProblems([wrong(3, "serial", "A", "is odd"), wrong(3, "serial", "A", "is odd")])[0]?.rows).toEqual([3]);
});

test("whole rows are never alike: each is wrong in its own way", () => {
  expect(
    alikeProblems([
      wrong(3, "", "a", "has 5 cells; the header has 4"),
      wrong(4, "", "a", "has 5 cells; the header has 4"),
    ]),
  ).toHaveLength(2);
});

test("kinds leave out the values they name, and the most frequent comes first", () => {
  const groups = alikeProblems([
    wrong(2, "visit", "2026-03-01", "is before requested_on, which is 2026-03-05"),
    wrong(5, "serial", "x", "is blank"),
    wrong(7, "visit", "2026-04-01", "is before requested_on, which is 2026-04-09"),
  ]);
  const kinds = kindsOfProblems(groups);
  expect(kinds).toEqual([
    { column: "visit", problem: "is before requested_on, which is …", rows: 2 },
    { column: "serial", problem: "is blank", rows: 1 },
  ]);
  expect(groups.filter((group) => kindKey(group) === kindKey(kinds[0] ?? group))).toHaveLength(2);
});

test.each([
  [[3], "3"],
  [[3, 17], "3 and 17"],
  [[3, 17, 40], "3, 17 and 40"],
  [[3, 17, 40, 41, 90], "3, 17, 40 and 2 more"],
])("rows %j read as %s", (rows, words) => {
  expect(rowsInWords(rows)).toBe(words);
});
