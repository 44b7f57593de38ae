// Files as companies send them: what becomes of each row by the way that the pages go, look, match, check.
import { expect, test } from "vitest";
import { guessMatching } from "@/lib/intake/matching/guess-matching";
import { translator } from "@/lib/intake/matching/translate-row";
import { parseJobRow } from "@/lib/intake/parse-job-row";
import { readRows } from "@/lib/intake/tables/read-rows";
import { fileOf, lookAt } from "../tables/table-files";
import { setting } from "./full-setting";
import { nasty } from "./nasty-files";

/** Questions that stay open, and each row as taken, held with its column and problem, or refused with its reason. */
async function outcome(content: string | Buffer) {
  const path = fileOf(content);
  const look = await lookAt(path);
  const guess = guessMatching(
    { header: look.header, rows: look.sample },
    { catalogue: setting.catalogue, today: setting.today },
  );
  const translate = translator(guess.matching, look.header, setting);
  const rows: string[] = [];
  for await (const item of readRows(path, look.form)) {
    if (item.kind === "problem") rows.push(item.problem.problem);
    else if (item.kind === "unread") rows.push(`${item.row} ${item.problem.problem} ${item.problem.fix}`);
    else {
      const read = translate(item);
      if (read.kind === "refused") rows.push(`${item.row} ${read.reason}`);
      const problems = read.kind === "held" ? read.problems : [];
      const job = read.kind === "rows" ? read.rows.find(({ kind }) => kind === "jobs") : undefined;
      const parsed = job === undefined ? undefined : parseJobRow(job.cells, setting);
      if (parsed?.ok === true) rows.push(`${item.row} ${parsed.value.job.completedOn}`);
      for (const { column, value, problem, fix } of [...problems, ...(parsed?.ok === false ? parsed.problems : [])]) {
        expect([value.length <= 150, problem, fix]).toEqual([
          true,
          expect.stringMatching(/./),
          expect.stringMatching(/\.$/),
        ]);
        rows.push(`${item.row} ${column} ${problem}`);
      }
    }
  }
  return { header: look.header, asked: guess.problems.map(({ about, target }) => `${about} ${target}`.trim()), rows };
}

test("a title, two lines of headers and the header again in the middle", async () => {
  const { header, asked, rows } = await outcome(nasty.headers);
  expect(header).toEqual(["Job No", "Brand", "Serial", "Called", "Done", "Labour"]);
  expect(asked).toEqual(["labour unit"]);
  expect(rows).toEqual(["5 2024-05-02", "6 2024-05-04", "7 The header again.", "8 2024-05-06"]);
});

test("totals inside and notes after the rows", async () => {
  expect((await outcome(nasty.totals)).rows).toEqual([
    "2 2024-05-02",
    "3 2024-05-04",
    '4 A row of totals: it begins with "Subtotal May".',
    "5 2024-06-06",
    '6 A row of totals: it begins with "Grand total".',
    '8 A note, no record: its only cell says "* Trips are charged as agreed in March.".',
    '9 A note, no record: its only cell says "Page 1 of 1".',
  ]);
});

test("days in five notations, of which one is ambiguous, one stands for none and one is no day", async () => {
  const { asked, rows } = await outcome(nasty.days);
  expect(asked).toEqual(["date order"]);
  expect(rows).toEqual([
    "2 2024-02-13",
    "3 2024-02-13",
    "4 2024-02-13",
    "5 2024-02-13",
    "6 Closed can be read as 2024-03-04 or as 2024-04-03",
    "7 2024-02-19",
    "8 completed_on is blank",
    "9 Closed cannot be read as a day",
  ]);
});

test("semicolons with decimal commas, in German; UTF-16 with tabs", async () => {
  expect(await outcome(nasty.semicolons)).toMatchObject({
    asked: [],
    rows: ["2 2024-02-13", "3 2024-02-14", "4 2024-02-15"],
  });
  expect((await outcome(nasty.wide)).rows).toEqual(["2 2024-05-02"]);
});

test("serials and part numbers that a spreadsheet has damaged", async () => {
  expect((await outcome(nasty.damaged)).rows).toEqual([
    "2 Serial lost its digits in the spreadsheet; the serial behind 1.23E+15 cannot be recovered from this file",
    "2 Part No is a day: a spreadsheet turned a part number such as MAR1 or 3-1 into 5-Jan",
    "3 Part No lost its digits in the spreadsheet; the part number behind 1E5 cannot be recovered from this file",
    "4 Serial #N/A is a spreadsheet's error, not a serial",
    "5 2024-05-02",
    "6 2024-05-02",
    "7 2024-05-02",
    "8 2024-05-02",
  ]);
});

test("a byte order mark and a NUL in the middle; a quotation mark that is never closed", async () => {
  expect((await outcome(nasty.marks)).rows).toEqual([
    "2 2024-05-02",
    "3 2024-05-02",
    "4 The header again.",
    "5 serial contains a NUL character",
  ]);
  expect((await outcome(nasty.quotes)).rows).toEqual([
    "2 2024-05-02",
    "3 2024-05-03",
    "4 A quotation mark is opened in this row and never closed. Close it, or take it away. A quotation mark inside a cell is written twice.",
    "5 2024-05-05",
  ]);
});

test("cells of 100,000 characters", async () => {
  const tooLong = "characters; the limit is 20000";
  expect((await outcome(nasty.long)).rows).toEqual([
    `2 complaint has 100000 ${tooLong}`,
    `3 maker has 100000 ${tooLong}`,
    `4 job_number has 100002 ${tooLong}`,
  ]);
});
