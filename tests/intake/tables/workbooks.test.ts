import { readFileSync } from "node:fs";
import { fileURLToPath } from "node:url";
import { expect, test } from "vitest";
import type { CellMark } from "@/lib/intake/tables/source-row";
import { cellsOf, fileOf, itemsOf, lookAt } from "./table-files";
import { workbookParts, zipFile } from "./zip-file";

// Workbooks of two independent writers, kept with the scripts that made them: openpyxl 3.1.5 and LibreOffice 7.4.7.
const fixture = (name: string) => fileURLToPath(new URL(`../../reference/workbooks/${name}`, import.meta.url));

const written = [
  ["J-1", "812000000000", "2024-02-29", "2024-02-29T14:05:00", "1.1", "26:30:00", "café ½ in, 120 °F, 5 Ω", "TRUE"],
  ["J-2", "0081200", "2023-12-31", "2023-12-31", "0.3", "1:30:00", "two\nlines", "FALSE"],
  ["J-3", "0000417", "1999-01-01", "1999-01-01T23:59:59", "-3", "0:00:00", " spaced ", "#N/A"],
];

test.each([
  ["library-1900.xlsx", 1900, "=1+1"],
  ["library-1904.xlsx", 1904, "=1+1"], // openpyxl does not calculate
  ["office-1904.xlsx", 1904, "2"],
] as const)("%s: the values that its writer was given come out, with the base of %i", async (name, dateBase, sum) => {
  const look = await lookAt(fixture(name));
  expect(look.form).toEqual({ kind: "workbook", sheet: "Jobs", dateBase, headerRow: 1 });
  expect(look.reasons.dateBase).toBe(`The workbook says that it counts its days from ${dateBase}.`);
  expect(await cellsOf(fixture(name))).toEqual([
    ...written,
    ["J-4", "1-MAR", "2024-03-01", "09:30:00", "0.0000001", "1:00:00", "", sum],
  ]);
});

test("a CSV file and the workbook that LibreOffice made of it give the same rows, formulas and numbers apart", async () => {
  const text = (await itemsOf(fixture("office.csv"))).map((item) => item.kind === "row" && item.cells.slice(0, 3));
  const cells = await cellsOf(fixture("office.xlsx"));
  expect(cells.map((row) => row.slice(0, 3))).toEqual(text);
  expect(cells.map((row) => row[5])).toEqual(["TRUE", "FALSE", "#DIV/0!", "2"]);
});

function marksOf(items: Awaited<ReturnType<typeof itemsOf>>, row: number): ReadonlyMap<number, CellMark> | undefined {
  const [item] = items.filter((each) => each.kind === "row" && each.row === row);
  return item?.kind === "row" ? item.marks : undefined;
}

test("what a cell stores and what it showed are kept beside its text", async () => {
  const items = await itemsOf(fixture("library-1900.xlsx"));
  expect(marksOf(items, 2)?.get(1)).toEqual({ kind: "number", stored: "812000000000" });
  expect(marksOf(items, 2)?.get(2)).toEqual({ kind: "day", stored: "45351", shown: "2/29/2024" });
  expect(marksOf(items, 4)?.get(7)).toEqual({ kind: "error", stored: "#N/A" });
  expect(marksOf(items, 5)?.get(2)).toEqual({ kind: "day", stored: "45352", shown: "1-Mar" });
  expect(marksOf(items, 5)?.get(7)).toEqual({ kind: "error", stored: "=1+1" });
  expect(marksOf(items, 2)?.has(0)).toBe(false);
});

test("of several used sheets the fullest is taken and a person is asked; another may be named", async () => {
  const look = await lookAt(fixture("library-sheets.xlsx"));
  expect(look.sheets).toEqual([
    { name: "Notes", rows: 1 },
    { name: "Jobs", rows: 32 },
  ]);
  expect(look.form).toMatchObject({ sheet: "Jobs", headerRow: 4 });
  expect(look.questions).toEqual([{ about: "sheet", question: "Which sheet holds the rows?" }]);
  expect(look.rows).toBe(30);
  const other = await lookAt(fixture("library-sheets.xlsx"), { sheet: "Notes" });
  expect([other.header, other.questions]).toEqual([["Exported by the office"], []]);
  await expect(lookAt(fixture("library-sheets.xlsx"), { sheet: "Blank" })).rejects.toThrow("has no sheet Blank");
});

const day = (stored: string, style: number) => `<c s="${style}"><v>${stored}</v></c>`;

// Serial numbers of days: ECMA-376 part 1, 18.17.4.1. 1900: 1 is 1900-01-01, 60 the 29 February that never was,
// 61 is 1900-03-01, 2958465 is 9999-12-31; 1904: 0 is 1904-01-01. The two differ by 1,462 days.
test.each([
  [
    "",
    ["1", "59", "61", "45352.75", "2958465"],
    ["1900-01-01", "1900-02-28", "1900-03-01", "2024-03-01T18:00:00", "9999-12-31"],
  ],
  ["", ["60", "0", "-1", "2958466", "45351.999999"], ["60", "0", "-1", "2958466", "2024-03-01"]],
  ['date1904="1"', ["0", "43890", "43889.5"], ["1904-01-01", "2024-03-01", "2024-02-29T12:00:00"]],
])("days of the base %j", async (workbookProperties, stored, texts) => {
  const rows = `<row><c t="inlineStr"><is><t>Day</t></is></c></row><row>${stored.map((each) => day(each, 2)).join("")}</row>`;
  expect((await cellsOf(fileOf(zipFile(workbookParts({ rows, workbookProperties }))), { headerRow: 1 }))[0]).toEqual(
    texts,
  );
});

test("cells of every type become text; rich text, escapes and missing references are understood", async () => {
  const rows =
    '<row r="1"><c r="A1" t="s"><v>0</v></c></row>' +
    '<row r="3"><c r="B3" t="s"><v>1</v></c><c t="b"><v>1</v></c><c r="E3" t="str"><f>A1</f><v>x&amp;y</v></c>' +
    '<c t="inlineStr"><is><r><t>in</t></r><r><t xml:space="preserve"> line</t></r></is></c><c s="3"><v>417</v></c><c s="4"><v>1.5</v></c>' +
    '<c t="d"><v>2024-03-01T00:00:00</v></c><c><v>1.2999999999999998E-2</v></c><c><v>1E+21</v></c><c s="1"/></row>';
  const texts = "<si><t>Job</t></si><si><r><t>ri</t></r><r><t>ch_x000D_</t></r><rPh><t>spoken</t></rPh></si>";
  const [item] = await itemsOf(fileOf(zipFile(workbookParts({ rows, texts }))), { headerRow: 1 });
  expect(item).toMatchObject({
    row: 3,
    cells: [
      "",
      "rich\r",
      "TRUE",
      "",
      "x&y",
      "in line",
      "000417",
      "36:00:00",
      "2024-03-01",
      "0.012999999999999998",
      `1${"0".repeat(21)}`,
    ],
  });
});

test("50,000 rows of 25 columns come out whole", async () => {
  const rows = Array.from(
    { length: 50_001 },
    (_, row) => `<row>${`<c><v>${row}</v></c>`.repeat(24)}<c t="s"><v>0</v></c></row>`,
  );
  const path = fileOf(zipFile(workbookParts({ rows: rows.join("") })));
  const items = await itemsOf(path, { headerRow: 1 });
  expect(items).toHaveLength(50_000);
  expect(items.at(-1)).toMatchObject({ row: 50_001, cells: [...Array(24).fill("50000"), "Job"] });
});

test("the same file under any name is the same", async () => {
  const path = fileOf(readFileSync(fixture("office.xlsx")), "jobs.csv");
  expect((await lookAt(path)).form.kind).toBe("workbook");
});
