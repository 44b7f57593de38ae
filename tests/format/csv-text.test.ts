import { parse } from "csv-parse/sync";
import { expect, test } from "vitest";
import { csvText } from "@/lib/format/csv-text";

// A separate reader of RFC 4180 must get back what was written.
test("quotes, separators and line breaks inside a cell come back as they were", () => {
  const rows = [
    ['say "no"', "a,b", "two\r\nlines"],
    ["", " spaced ", "ünï ½ Ω"],
  ];
  const read = parse(csvText(["one", "two", "three"], rows), { bom: true }) as string[][];
  expect(read).toEqual([["one", "two", "three"], ...rows]);
});

// OWASP, CSV injection: cells beginning with one of these run as formulas in a spreadsheet.
test.each(["=1+1", "+1", "-1+2", "@sum", "\tx", "\rx", "\nx", "\0x", "＝1", "＋1", "－1", "＠x"])(
  "text %j can't run as a formula",
  (text) => {
    expect(parse(csvText(["a"], [[text]]), { bom: true })[1]).toEqual([`'${text}`]);
  },
);

test("a negative number stays a number", () => {
  expect(csvText(["a"], [[-12.5]])).toBe("\uFEFFa\r\n-12.5\r\n");
});

test.each(["-12.50", "-1.234,56", "-7"])("the text %s of somebody's file stays the number that it is", (text) => {
  expect(parse(csvText(["a"], [[text]]), { bom: true })[1]).toEqual([text]);
});
