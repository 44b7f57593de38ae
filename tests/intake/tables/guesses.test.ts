import { expect, test } from "vitest";
import { cellsOf, fileOf, lookAt } from "./table-files";

test.each([
  [",", "Comma: 3 of 3 rows looked at have 4 columns."],
  [";", "Semicolon: 3 of 3 rows looked at have 4 columns."],
  ["\t", "Tab: 3 of 3 rows looked at have 4 columns."],
  ["|", "Vertical bar: 3 of 3 rows looked at have 4 columns."],
])("the delimiter %j is found among cells that hold the others", async (delimiter, reason) => {
  const cells = [
    ["Job", "Model", "Cost", "Note"],
    ["1", "AB-1", "1.234,50", '"a, b; c | d"'],
    ["2", "AB-2", "12,00", "e"],
  ].map((row) => row.map((cell) => (cell.includes(delimiter) && !cell.startsWith('"') ? `"${cell}"` : cell)));
  const look = await lookAt(fileOf(cells.map((row) => row.join(delimiter)).join("\n")));
  expect(look.form).toMatchObject({ delimiter });
  expect(look.reasons.delimiter).toBe(reason);
});

test("decimal commas in every row do not make the comma the delimiter", async () => {
  const rows = Array.from({ length: 50 }, (_, row) => `${row};${row},50;${row},75;text`).join("\n");
  expect((await lookAt(fileOf(`Job;Cost;Tax;Note\n${rows}`))).form).toMatchObject({ delimiter: ";" });
});

test("a file of one column has the comma, and says why", async () => {
  const look = await lookAt(fileOf("Serial\nA1\nA2\n"));
  expect(look.reasons.delimiter).toBe("Comma: the file seems to have a single column.");
  expect(look.header).toEqual(["Serial"]);
});

test("titles, notes and blank lines above the header are no data", async () => {
  const path = fileOf(
    "Closed jobs,,,\nPrinted 2024-03-01,,,\n,,,\n\nJob,Model,Closed,Cost\n1,AB,2024-01-01,3\n2,AC,2024-01-02,4\n",
  );
  const look = await lookAt(path);
  expect(look.form).toMatchObject({ headerRow: 5 });
  expect(look.reasons.headerRow).toBe(
    "Row 5: the first row with a word in most columns; the rows above it are narrower or hold values.",
  );
  expect(look.rows).toBe(2);
  expect((await cellsOf(path))[0]).toEqual(["1", "AB", "2024-01-01", "3"]);
});

test("a line that names the delimiter for a spreadsheet is no data, and a year may be the name of a column", async () => {
  const look = await lookAt(fileOf(`sep=;\n${"a;b;c;d;e;f;g;h;i;2024\n"}${"1;2;3;4;5;6;7;8;9;10\n".repeat(5)}`));
  expect(look.form).toMatchObject({ delimiter: ";", headerRow: 2 });
  expect(look.rows).toBe(5);
});

test("a row that holds values may be no header, and a person is asked", async () => {
  const look = await lookAt(fileOf("1,AB,2024-01-01\n2,AC,2024-01-02\n"));
  expect(look.questions).toEqual([{ about: "headerRow", question: "Which row holds the names of the columns?" }]);
});

test("a header that is repeated, totals and trailing notes stay rows, for whoever judges rows", async () => {
  const path = fileOf("Job,Cost\n1,2\nJob,Cost\n2,3\nTotal,5\nEnd of report\n");
  expect(await cellsOf(path)).toEqual([["1", "2"], ["Job", "Cost"], ["2", "3"], ["Total", "5"], ["End of report"]]);
});

test("a look shows the first 20, 10 others and the last 5, each once, and samples 200 from all over", async () => {
  const path = fileOf(`Job\n${Array.from({ length: 5000 }, (_, row) => `J-${row}`).join("\n")}`);
  const { first, random, last, sample, rows } = await lookAt(path);
  expect([first.length, random.length, last.length, sample.length, rows]).toEqual([20, 10, 5, 200, 5000]);
  expect(new Set([...first, ...random, ...last].map(({ row }) => row)).size).toBe(35);
  expect([first[0]?.row, first[19]?.row, last[0]?.row, last[4]?.row]).toEqual([2, 21, 4997, 5001]);
  // By definition of an even spread: 200 of 5000 rows average 2501; the mean's standard error is 1443 / sqrt(200) = 102.
  const mean = sample.reduce((sum, { row }) => sum + row, 0) / sample.length;
  expect(Math.abs(mean - 2501)).toBeLessThan(4 * 102);
  expect(await lookAt(path)).toMatchObject({ random, sample });
});

test("a short file is shown whole, no row twice", async () => {
  const { first, random, last } = await lookAt(fileOf(`Job\n${"a\n".repeat(23)}`));
  expect([first.length, random.length, last.length]).toEqual([20, 0, 3]);
});

test("a header row that a person names, and which is not there, is said", async () => {
  await expect(lookAt(fileOf("a\nb\n"), { headerRow: 7 })).rejects.toThrow("Row 7 has no column names.");
});
