import { parse } from "csv-parse/sync";
import { describe, expect, test } from "vitest";
import { normalised } from "@/lib/domain/normalised";
import { csvText } from "@/lib/format/csv-text";
import type { KnownThings } from "@/lib/intake/matching/known-things";
import { NumbersOnFile } from "@/lib/intake/matching/numbers-on-file";
import { translator } from "@/lib/intake/matching/translate-row";
import type { Translation } from "@/lib/intake/matching/translation";
import { parseJobRow } from "@/lib/intake/parse-job-row";
import { guess, setting, translated } from "./full-setting";

const job = { job_number: "J1", maker: "Hearth-Wick", completed_on: "2025-03-09" };

function rowsOf(translation: Translation) {
  if (translation.kind !== "rows") throw new Error(JSON.stringify(translation));
  return translation.rows;
}

function notesOf(translation: Translation): readonly string[] {
  if (translation.kind !== "rows") throw new Error(JSON.stringify(translation));
  return translation.notes.map(({ column, taken, note }) => `${column} ${taken}: ${note}`);
}

function problemsOf(translation: Translation): readonly string[] {
  if (translation.kind !== "held") throw new Error(JSON.stringify(translation));
  return translation.problems.map(({ column, problem }) => `${column} ${problem}`);
}

describe("a row in our own notation", () => {
  test("comes through as it is, without a note, and the strict parser takes it", () => {
    const cells = {
      ...job,
      status: "closed",
      cause: "component",
      component: "drain_pump",
      labour_minutes: "90",
      trip: "85.00",
    };
    const translation = translated(cells);
    expect(translation).toEqual({ kind: "rows", rows: [{ kind: "jobs", cells }], notes: [] });
    expect(parseJobRow(rowsOf(translation)[0]?.cells ?? {}, setting)).toMatchObject({ ok: true });
  });

  test("keeps blank cells blank, and what is needed is asked for by the parser under its own name", () => {
    const [row] = rowsOf(translated({ job_number: "J1", maker: "Hearth-Wick", serial: " " }));
    expect(parseJobRow(row?.cells ?? {}, setting)).toMatchObject({
      problems: [{ column: "completed_on", problem: "is blank" }],
    });
  });
});

describe("a row of a file of ours that comes back", () => {
  const risky = [
    "=1+1",
    "+12 V at the pump",
    "-hums",
    "@home",
    "\tdrips",
    "\rdrips",
    "\ndrips",
    "＝1",
    "＋1",
    "－1",
    "＠x",
  ];

  test.each(risky)("%j, which stands behind an apostrophe there, is what it was", (text) => {
    const cells = { ...job, complaint: text, technician: `=${text.trim()}`, authorization_number: `-${text.trim()}` };
    const [, read = []] = parse(csvText(Object.keys(cells), [Object.values(cells)]), { bom: true }) as string[][]; // without columns rows are lists
    expect(read.filter((cell) => cell.startsWith("'"))).toHaveLength(3);
    const [row] = rowsOf(
      translator(guess(Object.keys(cells), [read]).matching, Object.keys(cells), setting)({ row: 2, cells: read }),
    );
    expect(row?.cells).toMatchObject(cells);
  });

  test.each(["'tis broken", "'", "''=1", "customer's =1"])("of %j no apostrophe is taken off", (text) => {
    expect(rowsOf(translated({ ...job, complaint: text }))[0]?.cells.complaint).toBe(text);
  });
});

describe("rows that are no records", () => {
  const header = ["Job", "Brand", "Closed", "Amount"];
  const matching = guess(header, [["J1", "Hearth-Wick", "2025-01-02", "5.00"]]).matching;
  const translate = translator(matching, header, setting);
  test.each([
    [["", " ", "\u00a0", ""], "Every cell is blank."],
    [["Job", "Brand", "Closed", "Amount"], "The header again."],
    [["JOB", "brand ", "Closed", ""], "The header again."],
    [["Total", "", "", "812.50"], 'A row of totals: it begins with "Total".'],
    [["", "Grand Total:", "", "812.50"], 'A row of totals: it begins with "Grand Total:".'],
    [["Summe", "", "", "812,50"], 'A row of totals: it begins with "Summe".'],
    [
      ["Printed 3/30/2025 by the office", "", "", ""],
      'A note, no record: its only cell says "Printed 3/30/2025 by the office".',
    ],
    [["* voids are not listed", "", "", ""], 'A note, no record: its only cell says "* voids are not listed".'],
    [["12 rows", "", "", ""], 'A note, no record: its only cell says "12 rows".'],
  ])("%j is refused with its reason", (cells, reason) => {
    expect(translate({ row: 9, cells })).toEqual({ kind: "refused", reason });
  });

  test("a job that only looks a little like one is kept", () => {
    expect(translate({ row: 9, cells: ["TOTAL-1", "Totalia", "2025-01-02", ""] }).kind).toBe("rows");
    expect(translate({ row: 9, cells: ["J9", "Brand", "2025-01-02", ""] }).kind).toBe("rows");
  });

  test("a row with more cells than the header has names is held with the place of the first", () => {
    expect(problemsOf(translate({ row: 9, cells: ["J9", "Hearth", "Wick", "2025-01-02", "5"] }))).toContain(
      " stands in column 5, and the header names 4",
    );
    expect(translate({ row: 9, cells: ["J9", "Hearth-Wick", "2025-01-02", "5", "", " "] }).kind).toBe("rows");
    expect(translate({ row: 9, cells: ["J9", "Hearth-Wick", "2025-01-02"] }).kind).toBe("rows");
  });
});

describe("a part line in a row of jobs", () => {
  const line = { "part-lines.part_number": "P-100", "part-lines.quantity": "2", "part-lines.unit_cost": "$41.50" };

  test("comes out beside the job, with the job's number and without a number of its own", () => {
    expect(rowsOf(translated({ ...job, ...line }))[1]).toEqual({
      kind: "part-lines",
      cells: { job_number: "J1", part_number: "P-100", quantity: "2", unit_cost: "41.50" },
    });
  });

  test("is none where its cells are blank or hold only the zeros of a program", () => {
    expect(rowsOf(translated({ ...job, "part-lines.part_number": "", "part-lines.unit_cost": "" })).length).toBe(1);
    const zeros = translated({
      ...job,
      "part-lines.part_number": "",
      "part-lines.quantity": "0",
      "part-lines.unit_cost": "0.00",
    });
    expect(rowsOf(zeros).length).toBe(1);
    expect(notesOf(zeros)).toEqual(["unit_cost : No part on this row.", "quantity : No part on this row."]);
  });

  test.each([
    ["FRT", "Freight", "freight", "FRT"],
    ["", "Shipping & handling", "freight", "FREIGHT"],
    ["P-9C", "Core charge", "core_charge", "P-9C"],
    ["P-9", "Core assembly", undefined, "P-9"],
    ["P-9", "Drain pump", undefined, "P-9"],
  ])("numbered %j and called %j has the role %s", (number, description, role, taken) => {
    const row = rowsOf(
      translated({ ...job, ...line, "part-lines.part_number": number, "part-lines.description": description }),
    )[1];
    expect(row?.cells).toMatchObject({ part_number: taken, ...(role !== undefined && { role }) });
    if (role === undefined) expect(row?.cells.role).toBeUndefined();
  });

  test("that was returned keeps its sign, and one of which none was used is held", () => {
    const quantity = (text: string) =>
      rowsOf(translated({ ...job, ...line, "part-lines.quantity": text }))[1]?.cells.quantity;
    expect(["-1", "(1)", "1-"].map(quantity)).toEqual(["-1", "-1", "-1"]);
    expect(problemsOf(translated({ ...job, ...line, "part-lines.quantity": "0" }))[0]).toContain("none was used");
  });
});

describe("words", () => {
  const words = { status: { comp: "closed", "*": "void" }, payer: { w: "maker" } };

  test("are read by the matching's list, then as our own words and names, then by what all others mean", () => {
    const status = (word: string) =>
      rowsOf(translated({ ...job, status: word }, { matching: { words } }))[0]?.cells.status;
    expect(["COMP ", "closed", "Cancelled", "whatever"].map(status)).toEqual(["closed", "closed", "cancelled", "void"]);
  });

  test("without a match hold the row", () => {
    expect(problemsOf(translated({ ...job, payer: "XYZ" }, { matching: { words } }))).toEqual([
      "Their payer is a word that has no match yet",
    ]);
    expect(problemsOf(translated({ ...job, status: "Unknown" }))).toEqual([
      "Their status is a word that has no match yet",
    ]);
  });

  test("that call a job void leave it out where it was never completed, whatever else is wrong with the row", () => {
    const row = { ...job, status: "void", completed_on: "" };
    expect(translated(row).kind, "it may take back a job on file").toBe("rows");
    expect(parseJobRow(rowsOf(translated(row))[0]?.cells ?? {}, setting)).toMatchObject({ ok: true });
    expect(translated({ ...row, requested_on: "2/30/2024" })).toEqual({
      kind: "refused",
      reason: "Void and never completed: it counts as nothing.",
    });
    expect(translated({ ...row, completed_on: "2/30/2024" }).kind).toBe("held");
    expect(parseJobRow({ ...rowsOf(translated(row))[0]?.cells, status: "closed" }, setting).ok).toBe(false);
  });

  test("that say a job is still open leave it out", () => {
    const parts = { words: { status: { "parts on order": "not_closed" } } };
    expect(translated({ ...job, status: "Parts on order" }, { matching: parts })).toEqual({
      kind: "refused",
      reason: "Not closed yet: the job comes in with a file in which it is closed.",
    });
  });

  test("may be written like the names on our pages", () => {
    expect(rowsOf(translated({ ...job, component: "Drain Pump", cause: "no fault found" }))[0]?.cells).toMatchObject({
      component: "drain_pump",
      cause: "no_fault_found",
    });
  });
});

describe("what is on file", () => {
  const known: KnownThings = {
    serials: new NumbersOnFile(["HW0012345", "HWS1108"].map(normalised)),
    models: new NumbersOnFile(["FW5500A2"]),
    modelsBeginning: (model) => ("FW5500A2".startsWith(model) ? ["FW5500-A2"] : []),
    partReplacedBy: (number) => (number === "P100" ? "P-101" : undefined),
  };
  const offered = (cells: Record<string, string>) => notesOf(translated({ ...job, ...cells }, { setting: { known } }));

  test("is offered where characters look alike, and never put in", () => {
    expect(offered({ serial: "HWOO12345" })).toEqual([
      "serial HWOO12345: Serial HW0012345 is on file and differs only in characters that look alike (O and 0, I and 1, S and 5, B and 8). Taken as it stands.",
    ]);
    expect(offered({ serial: "hw5iIO8" })).toEqual([]);
    expect(offered({ serial: "HW51108" })[0]).toContain("Serial HWS1108");
    expect(offered({ serial: "HW0012345" })).toEqual([]);
    expect(offered({ serial: "HW-0012345" })).toEqual([]);
  });

  test("is offered where a model lacks its suffix, and where a part has a successor", () => {
    expect(offered({ model: "FW5500" })).toEqual([
      "model FW5500: On file with a suffix: FW5500-A2. Taken as it stands.",
    ]);
    expect(offered({ "part-lines.part_number": "P-100", "part-lines.unit_cost": "1" })).toEqual([
      "part_number P-100: Superseded by P-101. Taken as it stands.",
    ]);
  });
});

describe("the row as a whole", () => {
  test("says when the purchase was on the day of the job", () => {
    expect(notesOf(translated({ ...job, sold_on: "2025-03-09" }))[0]).toMatch(/Bought on the day of the job itself/);
    expect(notesOf(translated({ ...job, sold_on: "2025-03-08" }))).toEqual([]);
  });

  test("takes its currency from the amounts, or is held where they disagree", () => {
    expect(rowsOf(translated({ ...job, trip: "€85.00" }))[0]?.cells).toMatchObject({ trip: "85.00", currency: "EUR" });
    expect(rowsOf(translated({ ...job, trip: "$85.00" }))[0]?.cells.currency).toBeUndefined();
    expect(problemsOf(translated({ ...job, currency: "USD", trip: "£85.00" }))).toEqual([
      "Their trip says £, and the currency of the row is USD",
    ]);
    expect(problemsOf(translated({ ...job, trip: "$85.00" }, { setting: { currency: "EUR" } })).length).toBe(1);
  });

  test("takes labour in hours as minutes, and labour in money as an amount", () => {
    expect(
      rowsOf(translated({ ...job, labour_minutes: "1.5" }, { matching: { labourUnit: "hours" } }))[0]?.cells
        .labour_minutes,
    ).toBe("90");
    expect(
      rowsOf(translated({ ...job, labour_minutes: "89.95" }, { matching: { labourUnit: "money" } }))[0]?.cells,
    ).toMatchObject({ labour: "89.95" });
  });

  test("knows a callback that does not name its job", () => {
    expect(notesOf(translated({ ...job, callback_of: "Y" }))[0]).toMatch(/without the number of the earlier job/);
    expect(rowsOf(translated({ ...job, callback_of: "N" }))[0]?.cells.callback_of).toBe("");
    expect(rowsOf(translated({ ...job, callback_of: "J0" }))[0]?.cells.callback_of).toBe("J0");
  });

  test("is given what holds for every row, unless it says otherwise", () => {
    const constants = { maker: "Kettleford", payer: "dealer" };
    expect(rowsOf(translated({ job_number: "J1", maker: "" }, { matching: { constants } }))[0]?.cells).toMatchObject(
      constants,
    );
    expect(rowsOf(translated(job, { matching: { constants } }))[0]?.cells.maker).toBe("Hearth-Wick");
  });
});

test("a matching for another header, or with a column that is none, is the caller's mistake", () => {
  const { matching } = guess(["Job", "Brand"], [["J1", "M"]]);
  expect(() => translator(matching, ["Job"], setting)).toThrow(new RangeError("header: has 1 columns, the matching 2"));
  expect(() => translated({ nonsense: "1" })).toThrow(RangeError);
});
