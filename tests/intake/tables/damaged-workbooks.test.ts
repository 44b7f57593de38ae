import { readFileSync } from "node:fs";
import { fileURLToPath } from "node:url";
import { expect, test } from "vitest";
import { lookAtTable } from "@/lib/intake/tables/look-at-table";
import { readRows } from "@/lib/intake/tables/read-rows";
import { fileOf, itemsOf, refusalOf, seededNumbers } from "./table-files";
import { withPart, workbookParts, zipFile } from "./zip-file";

// Malformed workbooks are refused kindly: a sentence that says what is wrong and what to do, never what was thrown.
const office = readFileSync(fileURLToPath(new URL("../../reference/workbooks/office.xlsx", import.meta.url)));

function expectSentence(refusal: string): void {
  expect(refusal).toMatch(/^[A-Z][^\n]*[.] [A-Z][^\n]*[.]$/);
  expect(refusal).not.toMatch(/\bat .*:\d+|undefined|\[object|Error\b|TypeError|0x/);
}

test("cut off at any of 200 places", async () => {
  for (let cut = 1; cut <= 200; cut++) {
    const refusal = await refusalOf(fileOf(office.subarray(0, Math.floor((office.length * cut) / 201))));
    expectSentence(refusal);
    if (cut > 2) expect(refusal).toContain("The workbook is cut off: its end is missing.");
  }
});

// Whatever byte is changed, the answer is a sentence or the same rows: a checksum keeps wrong cells out.
test("a byte changed at any of 400 places", async () => {
  const below = seededNumbers(5);
  const whole = JSON.stringify(await itemsOf(fileOf(office)));
  let refused = 0;
  for (let round = 0; round < 400; round++) {
    const bytes = Buffer.from(office);
    const place = below(bytes.length);
    bytes[place] = (bytes[place] ?? 0) ^ (1 + below(255));
    const looked = await lookAtTable(fileOf(bytes));
    if (!looked.ok) {
      refused++;
      expectSentence(looked.problems.map(({ problem, fix }) => `${problem} ${fix}`).join(" "));
    } else if (looked.look.form.kind === "workbook") expect(JSON.stringify(await itemsOf(fileOf(bytes)))).toBe(whole);
  }
  expect(refused).toBeGreaterThan(200);
});

test.each([
  "xl/workbook.xml",
  "xl/_rels/workbook.xml.rels",
  "xl/worksheets/sheet1.xml",
  "xl/sharedStrings.xml",
  "xl/styles.xml",
])("without its part %s", async (missing) => {
  const refusal = await refusalOf(fileOf(zipFile(workbookParts().filter(({ name }) => name !== missing))));
  expectSentence(refusal);
  expect(refusal).toContain(`The workbook is not whole: its part ${missing} is missing.`);
});

test.each([
  ["xl/worksheets/sheet1.xml", "<worksheet><sheetData><row></sheetData>", "its XML is not well formed"],
  ["xl/worksheets/sheet1.xml", "<worksheet><row r='2'/><row r='2'/></worksheet>", "its rows are not in order"],
  ["xl/worksheets/sheet1.xml", "<worksheet><row><c r='1'><v>1</v></c></row></worksheet>", "it has a cell at 1"],
  ["xl/worksheets/sheet1.xml", "<worksheet><row><c t='s'><v>9</v></c></row></worksheet>", "a text that is not there"],
  ["xl/worksheets/sheet1.xml", "", "its XML is not well formed"],
  ["xl/worksheets/sheet1.xml", "<worksheet/>", "The workbook has no cells with anything in them."],
  ["xl/workbook.xml", "<workbook/>", "The workbook has no cells with anything in them."],
  ["xl/vbaProject.bin", "macro", "The workbook carries macros (XLSM)"],
])("with %s holding %s", async (name, content, problem) => {
  const refusal = await refusalOf(fileOf(zipFile(withPart(workbookParts(), { name, content }))));
  expectSentence(refusal);
  expect(refusal).toContain(problem);
});

test("protected by a password inside the archive", async () => {
  const parts = workbookParts().map((part) => ({ ...part, encrypted: true }));
  expect(await refusalOf(fileOf(zipFile(parts)))).toContain("The workbook is protected by a password.");
});

test("changed between the look and the reading: the problem is the last item", async () => {
  const items = [];
  const form = { kind: "workbook", sheet: "Jobs", dateBase: 1900, headerRow: 1 } as const;
  for await (const item of readRows(fileOf(office.subarray(0, 3000)), form)) items.push(item);
  expect(items).toMatchObject([
    { kind: "problem", problem: { problem: "The workbook is cut off: its end is missing." } },
  ]);
});
