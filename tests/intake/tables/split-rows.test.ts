import { readdirSync, readFileSync } from "node:fs";
import { parse } from "csv-parse/sync";
import { expect, test } from "vitest";
import { RowSplitter } from "@/lib/intake/tables/split-rows";
import { seededNumbers } from "./table-files";

function split(text: string, { delimiter = ",", piece = text.length || 1 } = {}): (readonly string[] | string)[] {
  const splitter = new RowSplitter(delimiter);
  const items = [];
  for (let at = 0; at < text.length; at += piece) items.push(...splitter.push(text.slice(at, at + piece)));
  items.push(...splitter.end());
  return items.map((item) => {
    if (item.kind === "row") return item.cells;
    return item.kind === "unread" ? `${item.row}: ${item.raw}` : item.problem.problem;
  });
}

// RFC 4180, section 2, the examples of rules 1 to 7.
test.each([
  [
    "aaa,bbb,ccc\r\nzzz,yyy,xxx\r\n",
    [
      ["aaa", "bbb", "ccc"],
      ["zzz", "yyy", "xxx"],
    ],
  ],
  [
    "aaa,bbb,ccc\r\nzzz,yyy,xxx",
    [
      ["aaa", "bbb", "ccc"],
      ["zzz", "yyy", "xxx"],
    ],
  ],
  [
    '"aaa","bbb","ccc"\r\nzzz,yyy,xxx',
    [
      ["aaa", "bbb", "ccc"],
      ["zzz", "yyy", "xxx"],
    ],
  ],
  [
    '"aaa","b\r\nbb","ccc"\r\nzzz,yyy,xxx',
    [
      ["aaa", "b\r\nbb", "ccc"],
      ["zzz", "yyy", "xxx"],
    ],
  ],
  ['"aaa","b""bb","ccc"', [["aaa", 'b"bb', "ccc"]]],
])("reads the examples of RFC 4180: %j", (text, rows) => {
  expect(split(text)).toEqual(rows);
});

// csv-spectrum 2.0.0, an acid test by others: each CSV file beside the JSON that it must give. Its twelfth pair,
// location_coordinates, is left out: that JSON is no list and has another phone number than its CSV.
const spectrum = new URL("../../reference/csv-spectrum/", import.meta.url);
const names = readdirSync(spectrum).filter((name) => name.endsWith(".csv"));

test.each(names)("reads %s of csv-spectrum as its JSON says", (name) => {
  const [header, ...rows] = split(readFileSync(new URL(name, spectrum), "utf8"));
  const objects = rows.map((row) => Object.fromEntries((header as string[]).map((key, place) => [key, row[place]])));
  expect(objects).toEqual(JSON.parse(readFileSync(new URL(name.replace(".csv", ".json"), spectrum), "utf8")));
});

test("csv-spectrum is whole", () => {
  expect(names).toHaveLength(11);
});

// Checked against csv-parse, which shares no code: everything that both can read, in pieces of every size.
test.each([1, 2, 3, 4])("agrees with csv-parse on well-formed text of any content, seed %i", (seed) => {
  const below = seededNumbers(seed);
  const marks = [",", ";", '"', "\n", "\r", "\r\n", " ", "a", "é", "Ω", "\0", "\u202e", "x", "y", "1"];
  for (let round = 0; round < 300; round++) {
    const rows = Array.from({ length: 1 + below(6) }, () =>
      Array.from({ length: 1 + below(5) }, () => {
        const text = Array.from({ length: below(6) }, () => marks[below(marks.length)]).join("");
        return /[",\n\r]|^ *$|^ | $/.test(text) || below(3) === 0 ? `"${text.replaceAll('"', '""')}"` : text;
      }).join(","),
    );
    const ends = ["\n", "\r\n", "\r"];
    const text = rows.map((row) => row + ends[below(3)]).join("");
    const expected = (parse(text, { relax_column_count: true, record_delimiter: ["\r\n", "\n", "\r"] }) as string[][]) // lists without `columns`
      .filter((cells) => cells.some((cell) => cell.trim() !== ""));
    expect(split(text), JSON.stringify(text)).toEqual(expected);
    expect(split(text, { piece: 1 + below(4) }), JSON.stringify(text)).toEqual(expected);
  }
});

test.each([
  ["a mark inside an unquoted cell is text", 'a,5" hose,b', [["a", '5" hose', "b"]]],
  ["a mark that closes too early is text", '"a" b,c', [['"a" b', "c"]]],
  ["spaces around the marks are no content", ' "a,b" , "c"', [["a,b", "c"]]],
  ["an indented mark without a partner is text", ' "a,b', [[' "a', "b"]]],
  ["rows may be of any width", "a\nb,c,d\n,e", [["a"], ["b", "c", "d"], ["", "e"]]],
  ["all line ends may be mixed", "a\nb\rc\r\nd", [["a"], ["b"], ["c"], ["d"]]],
  ["a mark of byte order where files were joined is dropped", 'a\n\ufeff"b",c', [["a"], ["b", "c"]]],
  ["zero bytes and marks of writing direction are kept", "a\0,\u202eb", [["a\0", "\u202eb"]]],
])("%s", (_, text, rows) => {
  expect(split(text)).toEqual(rows);
  expect(split(text, { piece: 1 })).toEqual(rows);
});

test("a mark that is never closed costs its own line, and the rows below are read", () => {
  const text = 'h,i\na,"b\nc,d\n"e",f\ng,"h\n';
  const expected = [["h", "i"], '2: a,"b', ["c", "d"], ["e", "f"], '5: g,"h'];
  expect(split(text)).toEqual(expected);
  expect(split(text, { piece: 1 })).toEqual(expected);
});

test("a mark that breaks off after a cell over two lines costs its own line only", () => {
  const text = 'a,"b\nc","d\ne,f\n"g"\nh,"i\nj","k';
  const expected = ['1: a,"b', '2: c","d', ["e", "f"], ["g"], '5: h,"i', '6: j","k'];
  for (const piece of [1, 2, 3, 5, 8, 100]) expect(split(text, { piece })).toEqual(expected);
});

const six = (row: number, cell: string) => `${row},a,b,c,${cell},e`;

test("a mark that is closed rows below does not swallow them", () => {
  const text = [six(1, "d"), six(2, '"d'), six(3, "d"), six(4, "d"), six(5, 'd"'), six(6, "d")].join("\n");
  expect(split(text)).toEqual(
    [1, 2, 3, 4, 5, 6].map((row) => (row === 2 ? `2: ${six(2, '"d')}` : six(row, row === 5 ? 'd"' : "d").split(","))),
  );
  const quoted = text.replaceAll("a,b", '"a",b');
  expect(split(quoted)).toEqual(
    split(text).map((row) => (typeof row === "string" ? row.replace("a,b", '"a",b') : row)),
  );
});

test("a cell of several lines of prose stays one cell, however many commas it has", () => {
  const prose = "pump, hose, filter\nvalve, belt\nseal, gasket, spring, clip, bolt, nut, pin";
  expect(split([six(1, "d"), six(2, `"${prose}"`)].join("\n"))[1]).toEqual(["2", "a", "b", "c", prose, "e"]);
});

test("rows are numbered as a spreadsheet does: blank ones count, line ends inside a cell do not", () => {
  const splitter = new RowSplitter(",");
  const items = [...splitter.push('a\n\n"b\nb"\n,,\nc'), ...splitter.end()];
  expect(items.map((item) => item.kind === "row" && item.row)).toEqual([1, 3, 5]);
});

test("a cell of a million characters is read; a line without an end is not gathered for ever", () => {
  const long = "x".repeat(1_000_000);
  expect(split(`a,"${long}\n"\nb,c`, { piece: 65_536 })).toEqual([
    ["a", `${long}\n`],
    ["b", "c"],
  ]);
  const splitter = new RowSplitter(",");
  const items = Array.from({ length: 10 }, () => splitter.push(long)).flat();
  expect(items[0]).toMatchObject({ kind: "problem", problem: { row: 1 } });
});
