import { expect, test } from "vitest";
import { readTable, type TableItem } from "@/lib/intake/read-table";

async function read(...parts: readonly (string | readonly number[])[]): Promise<TableItem[]> {
  async function* bytes() {
    for (const part of parts) yield typeof part === "string" ? Buffer.from(part) : Uint8Array.from(part);
  }
  const items: TableItem[] = [];
  for await (const item of readTable(bytes())) items.push(item);
  return items;
}

const rows = async (text: string) =>
  (await read(text)).map((item) => (item.kind === "row" ? [item.row, ...item.cells] : item.problem.problem));

// Cases written for RFC 4180, section 2, rules 1 to 7; the last four are common practice, no source.
test.each([
  [
    "1 and 2: a line end after each row, the last one's left out",
    "a,b\r\n1,2\r\n3,4",
    [
      [1, "a", "b"],
      [2, "1", "2"],
      [3, "3", "4"],
    ],
  ],
  [
    "4: spaces belong to the cell",
    "a,b\r\n 1 ,2\r\n",
    [
      [1, "a", "b"],
      [2, " 1 ", "2"],
    ],
  ],
  [
    "5: a cell may stand in quotation marks",
    'a,b\r\n"1",2\r\n',
    [
      [1, "a", "b"],
      [2, "1", "2"],
    ],
  ],
  [
    "6: line ends and commas inside quotation marks",
    'a,b\r\n"1\r\n1","2,2"\r\n',
    [
      [1, "a", "b"],
      [2, "1\r\n1", "2,2"],
    ],
  ],
  [
    "7: a quotation mark inside is written twice",
    'a,b\r\n"a ""b"" c",2\r\n',
    [
      [1, "a", "b"],
      [2, 'a "b" c', "2"],
    ],
  ],
  [
    "7: an empty cell in quotation marks",
    'a,b\r\n"",""""\r\n',
    [
      [1, "a", "b"],
      [2, "", '"'],
    ],
  ],
  [
    "a mark at the beginning of the file",
    "\ufeffa,b\n1,2\n",
    [
      [1, "a", "b"],
      [2, "1", "2"],
    ],
  ],
  [
    "line feeds alone",
    "a,b\n1,2\n",
    [
      [1, "a", "b"],
      [2, "1", "2"],
    ],
  ],
  [
    "carriage returns alone",
    "a,b\r1,2\r",
    [
      [1, "a", "b"],
      [2, "1", "2"],
    ],
  ],
  [
    "blank rows keep their number and are left out",
    "a,b\n\n,\n1,2\n",
    [
      [1, "a", "b"],
      [4, "1", "2"],
    ],
  ],
])("%s", async (_, text, expected) => {
  expect(await rows(text)).toEqual(expected);
});

test("letters beyond ASCII come through, also where a chunk ends inside one", async () => {
  expect(await read("a\n", [0xce], [0xa9, 0x0a])).toEqual([
    { kind: "row", row: 1, cells: ["a"] },
    { kind: "row", row: 2, cells: ["Ω"] },
  ]);
});

test.each([
  ["a quotation mark never closed", 'a,b\n1,2\n3,"4', "Row 3 opens a quotation mark that is never closed."],
  ["a quotation mark in the middle", 'a,b\n1,3" hose\n', "Row 2 has a quotation mark in the wrong place."],
  ["text after a closing mark", 'a,b\n1,"2"x\n', "Row 2 has a quotation mark in the wrong place."],
  ["a row of five megabytes", `a,b\n1,"${"x".repeat(5_000_000)}"\n`, "Row 2 is longer than 4 MB."],
  ["a workbook", "PK\x03\x04…", "This is a spreadsheet workbook (XLSX) or a ZIP archive, not CSV."],
  ["a PDF", "%PDF-1.7", "This is a PDF document, not CSV."],
])("%s is named with its place", async (_, text, problem) => {
  expect((await rows(text)).at(-1)).toBe(problem);
});

test("text in another encoding is refused with its line", async () => {
  const last = (await read("a\n1\n", [0xe9, 0x0a])).at(-1);
  expect(last).toMatchObject({ kind: "problem", problem: { problem: "The text is not UTF-8, at or after line 3." } });
});

test("an empty file has no rows", async () => {
  expect(await read()).toEqual([]);
  expect(await read("\n\n")).toEqual([]);
});
