import { describe, expect, test } from "vitest";
import type { CellMark } from "@/lib/intake/tables/source-row";
import { translated } from "./full-setting";

// What spreadsheets do to numbers, names and days of a service company. Sources for the kinds of damage: Zeeberg et al.
// 2004 (dates and floating-point numbers made of names), Ziemann et al. 2016, Abeysooriya et al. 2021; the day numbers and
// errors are those of ECMA-376 (from memory); the cases themselves are made up after them.

const job = { job_number: "J1", maker: "Hearth-Wick", completed_on: "2025-03-09" };
const usual = { usualLengths: { serial: 9, "part-lines.part_number": 8 } };

/** Column, cell, what must become of it: held with these words; blank, or text, with a note that has these words. */
type Case = readonly [
  column: string,
  cell: string,
  fate: "held" | "blank" | "kept" | string,
  words: RegExp,
  mark?: CellMark,
];

const number = (stored: string): CellMark => ({ kind: "number", stored });
const dayMark = (shown: string): CellMark => ({ kind: "day", stored: "45717", shown });

const cases: readonly Case[] = [
  // Scientific notation: 15 digits at most survive, and the text shows fewer.
  [
    "serial",
    "8.12E+11",
    "held",
    /lost its digits in the spreadsheet; the serial behind 8\.12E\+11 cannot be recovered/,
  ],
  ["serial", "8,12E+11", "held", /cannot be recovered from this file/],
  ["serial", "1E+10", "held", /cannot be recovered/],
  ["serial", "4.50e+12", "held", /cannot be recovered/],
  ["serial", "1.23457E+14", "held", /cannot be recovered/],
  ["part-lines.part_number", "2.04E+07", "held", /part number behind 2\.04E\+07/],
  ["part-lines.part_number", "3E5", "held", /cannot be recovered/],
  ["job_number", "1.0E+06", "held", /job number behind/],
  ["model", "5.5E+3", "held", /model behind/],
  ["part-lines.invoice_number", "9.91E+09", "held", /invoice number behind/],
  ["authorization_number", "7.7E+08", "held", /authorization number behind/],
  ["callback_of", "1.2E+05", "held", /cannot be recovered/],
  ["serial", "8.12E+11", "812000123456", /Shown as 8\.12E\+11; the cell stores all its digits/, number("812000123456")],
  ["serial", "8.12E+17", "held", /cannot be recovered/, number("812000123456000000")],
  ["serial", "8.12E+17", "held", /cannot be recovered/, number("8.12000123456E+17")],
  // Days made of names and numbers.
  [
    "part-lines.part_number",
    "1-MAR",
    "held",
    /is a day: a spreadsheet turned a part number such as MAR1 or 3-1 into 1-MAR/,
  ],
  ["part-lines.part_number", "Mar-01", "held", /is a day/],
  ["part-lines.part_number", "02-Sep", "held", /is a day/],
  ["part-lines.part_number", "Sept-02", "held", /is a day/],
  ["part-lines.part_number", "1. Mrz", "held", /is a day/],
  ["part-lines.part_number", "10-Dec", "held", /is a day/],
  ["part-lines.part_number", "3/1/2025", "held", /is a day/],
  ["part-lines.part_number", "3/1/25", "held", /is a day/],
  ["part-lines.part_number", "2025-03-01", "held", /is a day/],
  ["part-lines.part_number", "2025-03-01 00:00:00", "held", /is a day/],
  ["part-lines.part_number", "2025-03-01", "held", /turned a part number .* into 1-Mar/, dayMark("1-Mar")],
  ["serial", "5-May", "held", /is a day/],
  ["model", "Oct-25", "held", /is a day/],
  ["model", "2025-10-25", "held", /is a day/, dayMark("25-Oct")],
  ["job_number", "12-Apr", "held", /is a day/],
  // Zeros in front, lost or kept by force.
  [
    "serial",
    "81234567",
    "kept",
    /It has 8 digits, the others 9: a spreadsheet may have lost zeros in front \(081234567\)/,
  ],
  ["serial", "812345", "kept", /\(000812345\)/],
  ["part-lines.part_number", "1234567", "kept", /\(01234567\)/],
  ["serial", '="00123456"', "00123456", /marks around it/],
  ["serial", "'00123456", "00123456", /marks around it/],
  ["serial", "812345678.0", "812345678", /took it for a number and added decimals/],
  ["job_number", "1042.00", "1042", /added decimals/],
  // Formulas and their errors.
  ["serial", "#REF!", "held", /#REF! is a spreadsheet's error/],
  ["serial", "#N/A", "held", /is a spreadsheet's error/],
  ["serial", "#NAME?", "held", /is a spreadsheet's error/],
  ["serial", "########", "held", /is a spreadsheet's error/],
  ["model", "#VALUE!", "held", /is a spreadsheet's error/],
  ["job_number", "#NUM!", "held", /is a spreadsheet's error/],
  ["part-lines.part_number", "#BEZUG!", "held", /is a spreadsheet's error/],
  ["part-lines.part_number", "0", "held", /is a spreadsheet's error/, { kind: "error", stored: "#N/A" }],
  ["serial", "=VLOOKUP(A2;B:B;1)", "held", /is a formula/],
  ["technician", "#N/A", "blank", /is a spreadsheet's error/],
  ["complaint", "#NULL!", "blank", /is a spreadsheet's error/],
  ["trip", "#DIV/0!", "blank", /is a spreadsheet's error/],
  ["status", "#VALUE!", "held", /has no match yet/],
  // Day numbers, counted from 1900 or from 1904, which differ by 1,462 days.
  ["requested_on", "45717", "2025-03-01", /counted from 1904 it would lie in the future/],
  ["requested_on", "45717.58", "2025-03-01", /day number/],
  ["requested_on", "43000", "held", /2017-09-22 counted from 1900, 2021-09-23 counted from 1904/],
  ["sold_on", "42736", "held", /2017-01-01 counted from 1900/],
  ["requested_on", "457170", "held", /bare number/],
  ["requested_on", "######", "held", /cannot be read as a day/],
  // Days that stand for none.
  ["sold_on", "1/1/1900", "blank", /stands for "no date"/],
  ["sold_on", "1899-12-30", "blank", /stands for "no date"/],
  ["sold_on", "0000-00-00", "blank", /stands for "no date"/],
  ["sold_on", "00/00/0000", "blank", /stands for "no date"/],
  ["sold_on", "12/31/9999", "blank", /stands for "no date"/],
  ["sold_on", "1/0/1900", "held", /no day of the calendar/],
  // A year alone and a number where a day belongs.
  ["sold_on", "2025", "held", /bare number/],
  ["made", "2019.0", "2019", /year/],
  // Text in a column of numbers.
  ["visits", "2.00", "2", /whole number/],
  ["visits", "1-Feb", "held", /cannot be read as a number/],
];

describe("damage of a spreadsheet is named and held, or explained", () => {
  test("the set has sixty cases and more", () => {
    expect(cases.length).toBeGreaterThanOrEqual(60);
  });

  const named = cases.map(([column, cell, fate, words, mark]) => ({ column, cell, fate, words, mark }));
  test.each(named)("$column: $cell is $fate", ({ column, cell, fate, words, mark }) => {
    const others = Object.fromEntries(Object.entries(job).filter(([name]) => name !== column));
    const part = column.startsWith("part-lines.") ? { "part-lines.unit_cost": "5" } : {};
    const result = translated({ ...others, ...part, [column]: cell }, { matching: usual, ...(mark && { mark }) });
    if (fate === "held") {
      expect(result).toMatchObject({ kind: "held", problems: [{ column: `Their ${column}` }] });
      if (result.kind !== "held") return;
      expect(result.problems[0]?.problem).toMatch(words);
      expect(result.problems[0]?.value).toBe(cell);
      expect(result.problems[0]?.fix.length).toBeGreaterThan(20);
      return;
    }
    if (result.kind !== "rows") throw new Error(JSON.stringify(result));
    const [note] = result.notes.filter(({ source }) => source === `Their ${column}`);
    expect(note).toMatchObject({ raw: cell, taken: fate === "blank" ? "" : fate === "kept" ? cell : fate });
    expect(note?.note).toMatch(words);
    const name = column.replace("part-lines.", "");
    expect(result.rows.map(({ cells }) => cells[name])).toContain(note?.taken);
  });
});

test("numbers that only look a little like damage are taken as they stand", () => {
  for (const serial of [
    "HW0012345",
    "123E45",
    "MAR123456",
    "1234-MAR",
    "2025-03-01-17",
    "812345678",
    "E12",
    "10-MARK",
  ]) {
    const result = translated({ ...job, serial }, { matching: usual });
    expect(result, serial).toMatchObject({ kind: "rows", rows: [{ cells: { serial } }], notes: [] });
  }
});
