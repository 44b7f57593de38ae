import { afterAll, beforeEach, describe, expect, test } from "vitest";
import { closeDatabase } from "@/db/close-database";
import type { LoadResult } from "@/db/writes/load-result";
import { recount } from "@/db/writes/recount";
import { csv, fileFolder, job, partLine, shopDocument, startAfresh, unit } from "./intake-files";
import { stateOfData } from "./state-of-data";

const files = fileFolder();

beforeEach(async () => {
  await startAfresh();
  await files.load(JSON.stringify(shopDocument));
});
afterAll(async () => {
  files.remove();
  await closeDatabase();
});

/** Total, new, changed, same, held. */
function counts(result: LoadResult): readonly number[] {
  if (!("report" in result)) throw new Error(JSON.stringify(result));
  const { rowsTotal, rowsNew, rowsChanged, rowsSame, rowsHeld } = result.report;
  expect(rowsNew + rowsChanged + rowsSame + rowsHeld).toBe(rowsTotal);
  return [rowsTotal, rowsNew, rowsChanged, rowsSame, rowsHeld];
}

/** Row, column and problem of everything that is wrong. */
function problems(result: LoadResult): readonly string[] {
  if ("report" in result)
    return result.report.problems.map(({ row, column, problem }) => `${row} ${column} ${problem}`);
  return "problems" in result ? result.problems.map(({ problem }) => problem) : [];
}

const washer = { product_type: "front_load_washer" };
const units = [unit("A1"), unit("A2", { sold_on: "2022-02-20" }), unit("A3", { installed_on: "", made: "2022-11" })];
const jobs = [
  job("J1", "A1"),
  job("J2", "A2", { cause: "foreign_object", component: "" }),
  job("J3", ""),
  job("J4", "X9"),
];

describe("the same again", () => {
  test("bytes that were loaded change nothing and name the first load", async () => {
    expect(counts(await files.load(csv(units), "add", "units.csv"))).toEqual([3, 3, 0, 0, 0]);
    const before = await stateOfData();
    expect(await files.load(csv(units))).toMatchObject({ kind: "loaded before", fileName: "units.csv", rows: 3 });
    expect(await stateOfData()).toEqual(before);
  });

  test("rows in another order, with other columns and in other notation are all the same", async () => {
    await files.load(csv(units));
    const before = await stateOfData();
    const again = units
      .toReversed()
      .map((row) => ({ ...row, serial: String(row.serial).toLowerCase(), maker: "HEARTH WICK" }));
    expect(counts(await files.load(csv(again)))).toEqual([3, 0, 0, 3, 0]);
    expect(counts(await files.load(csv(units, ["serial", "maker", "model", "product_type"])))).toEqual([3, 0, 0, 3, 0]);
    expect(await stateOfData()).toEqual(before);
  });

  test("a row that a file repeats word for word counts as the same", async () => {
    expect(counts(await files.load(csv([...units, unit("A1")])))).toEqual([4, 3, 0, 1, 0]);
  });

  test("two loads of one file at once add it once", async () => {
    const both = await Promise.all([files.load(csv(units)), files.load(csv(units))]);
    expect(both.map(({ kind }) => kind).toSorted()).toEqual(["added", "loaded before"]);
  });
});

test("an overlapping file adds what is new, changes what differs and leaves the rest", async () => {
  await files.load(csv(units));
  const second = [unit("A1"), unit("A2", { sold_on: "2022-02-21" }), unit("A4")];
  const before = await stateOfData();
  expect(counts(await files.load(csv(second), "dry run"))).toEqual([3, 1, 1, 1, 0]);
  expect(await stateOfData()).toEqual(before);
  expect(counts(await files.load(csv(second)))).toEqual([3, 1, 1, 1, 0]);
});

test("a column that a file lacks leaves what is stored; a blank cell clears it", async () => {
  await files.load(csv([unit("A2", { sold_on: "2022-02-20" })]));
  await files.load(
    csv([{ ...unit("A2"), territory: "US-OR" }], ["maker", "model", "product_type", "serial", "territory"]),
  );
  const [stored = ""] = (await stateOfData()).units ?? [];
  expect(stored).toContain('"sold_on": "2022-02-20"');
  expect(stored).toContain('"territory": "US-OR"');
  await files.load(csv([unit("A2", { sold_on: "" })]));
  expect((await stateOfData()).units?.[0]).toContain('"sold_on": null');
});

describe("all or nothing", () => {
  const dirty = [...units, unit("A5", { installed_on: "2023-02-30" }), unit("A6")];

  test("one wrong row refuses the file, with the row's place", async () => {
    const before = await stateOfData();
    const refused = await files.load(csv(dirty));
    expect(refused.kind).toBe("refused");
    expect(counts(refused)).toEqual([5, 4, 0, 0, 1]);
    expect(problems(refused)).toEqual(["5 installed_on is no day of the calendar"]);
    expect(await stateOfData()).toEqual(before);
  });

  test("set aside, it is kept with its reason and the others go in", async () => {
    expect(counts(await files.load(csv(dirty), "add and set aside"))).toEqual([5, 4, 0, 0, 1]);
    expect((await stateOfData()).units).toHaveLength(4);
  });
});

test.each([
  ["", "The file is empty."],
  ["maker,model,product_type,serial\n", "The file has a header and no rows."],
  ["maker,model,product_type\nA,B,C\n", "Column serial is missing."],
  ["PK\x03\x04", "This is a spreadsheet workbook (XLSX) or a ZIP archive, not CSV."],
  [
    'maker,model,product_type,serial\nA,B1,front_load_washer,"S1\n',
    "Row 2 opens a quotation mark that is never closed.",
  ],
])("the file %j is refused whole", async (text, problem) => {
  expect(problems(await files.load(text, "add and set aside"))).toEqual([problem]);
});

describe("jobs against the register", () => {
  beforeEach(async () => {
    await files.load(csv(units));
  });

  test("hang on their unit, on one known only from them, or on one without a serial", async () => {
    expect(counts(await files.load(csv(jobs)))).toEqual([4, 4, 0, 0, 0]);
    const state = await stateOfData();
    expect(state.units).toHaveLength(5);
    expect(state.unplaced_units).toEqual([
      expect.stringMatching(/"units": 2.*"not_in_register"|"not_in_register".*"units": 2/),
    ]);
    expect(counts(await files.load(csv([unit("X9")])))).toEqual([1, 0, 1, 0, 0]);
    expect((await stateOfData()).unplaced_units).toEqual([expect.stringContaining('"units": 1')]);
  });

  test("may drop the suffix of a model, and nothing else", async () => {
    const result = await files.load(
      csv([
        job("J1", "A1", { model: "FW55" }),
        job("J2", "A2", { model: "FW6600" }),
        job("J3", "A2", { model: "FW5" }),
      ]),
    );
    expect(problems(result)).toEqual([
      "3 serial belongs to model FW5500; this row says FW6600",
      "4 serial belongs to model FW5500; this row says FW5",
    ]);
  });

  test("of a model that nobody knows need the kind of appliance", async () => {
    expect(problems(await files.load(csv([job("J1", "Z1", { model: "DW100" })])))).toEqual([
      "2 model is not a model of Hearth-Wick on file, and the row does not say which kind of appliance it is",
    ]);
    expect(
      counts(
        await files.load(
          csv([job("J1", "Z1", { model: "DW100", product_type: "dishwasher" }), job("J2", "Z2", { model: "DW100" })]),
        ),
      ),
    ).toEqual([2, 2, 0, 0, 0]);
  });

  test("cannot move to another unit, be there twice, or name a component of another kind of appliance", async () => {
    await files.load(csv([job("J1", "A1")]));
    const result = await files.load(
      csv([
        job("J1", "A2"),
        job("J2", "A2"),
        job("J2", "A2", { visits: 2, cause: "foreign_object" }),
        job("J3", "A2", { component: "oven_control", symptom: "will_not_tumble" }),
        job("J4", "A1"),
        job("J4", "A2"),
      ]),
    );
    expect(problems(result)).toEqual([
      "2 job_number is on file for serial A1; this row says A2",
      "4 job_number names the same job as row 3, with other values",
      "5 component is not a component of the kind front_load_washer",
      "7 job_number is the number of the job in row 6, which names another unit",
    ]);
  });

  test("of a file without the first day must not be completed before it", async () => {
    await files.load(csv([job("J1", "A1")]));
    const result = await files.load(
      csv(
        [job("J1", "A1", { completed_on: "2023-04-01" })],
        ["job_number", "maker", "model", "serial", "completed_on", "cause"],
      ),
    );
    expect(problems(result)).toEqual([
      "2 job_number would have completed_on 2023-04-01 before requested_on 2023-05-01",
    ]);
  });

  test("carry part lines and readings; a line of a job that is not on file is refused", async () => {
    await files.load(csv(jobs));
    expect(counts(await files.load(csv([partLine("J1", 1), partLine("J1", 2), partLine("J4", 1)])))).toEqual([
      3, 3, 0, 0, 0,
    ]);
    expect(problems(await files.load(csv([partLine("J9", 1)])))).toEqual([
      "2 job_number is not the number of a job on file",
    ]);
    const reading = {
      job_number: "J1",
      number: 1,
      check: "pump_winding",
      mode: "ohm",
      outcome: "number",
      value: "14.2",
      unit: "ohm",
      power: "off",
      taken_at: "2023-05-03T09:00:00-07:00",
    };
    expect(
      counts(await files.load(csv([reading, { ...reading, number: 2, outcome: "open", value: "", unit: "" }]))),
    ).toEqual([2, 2, 0, 0, 0]);
    expect(counts(await files.load(csv([{ ...reading, taken_at: "2023-05-03T16:00:00Z" }])))).toEqual([1, 0, 0, 1, 0]);
  });
});

describe("units against what is stored", () => {
  test("keep their model and its kind of appliance", async () => {
    await files.load(csv(units));
    expect(
      problems(await files.load(csv([unit("A1", { model: "FW9" }), unit("A9", { product_type: "dishwasher" })]))),
    ).toEqual([
      "2 serial belongs to model FW5500; this row says FW9",
      "3 product_type is not the kind of model FW5500, which is front_load_washer",
    ]);
  });

  test("known only from a job take the register's model with its suffix", async () => {
    await files.load(csv([job("J1", "A1", { ...washer, model: "FW55" })]));
    await files.load(csv(units));
    const state = await stateOfData();
    expect(state.units?.every((row) => row.includes('"model": "FW5500"'))).toBe(true);
    expect(state.job_cells).toHaveLength(1);
  });
});

test("in service is the day installed, else delivered, else sold, else made with the company's grace, never past retirement", async () => {
  const made = { installed_on: "", made: "2022-01", delivered_on: "", retired_on: "" };
  await files.load(
    csv(
      [
        unit("A1", { ...made, sold_on: "2022-02-20", delivered_on: "2022-02-25", installed_on: "2022-03-01" }),
        unit("A2", { ...made, sold_on: "2022-02-20", delivered_on: "2022-02-25" }),
        unit("A3", { ...made, sold_on: "2022-02-20" }),
        unit("A4", made),
        unit("A5", { ...made, retired_on: "2022-03-15" }),
        unit("A6", { ...made, made: "" }),
      ],
      ["maker", "model", "product_type", "serial", "made", "sold_on", "delivered_on", "installed_on", "retired_on"],
    ),
  );
  const found = (await stateOfData()).units
    ?.map((row) => JSON.parse(row) as Record<string, unknown>)
    .map((row) => [row.serial, row.in_service_on, row.in_service_basis]);
  // Made in January 2022: the latest day is the 31st; three months on is the 30th of April, its month being shorter.
  expect(found?.toSorted()).toEqual([
    ["A1", "2022-03-01", "installed"],
    ["A2", "2022-02-25", "delivered"],
    ["A3", "2022-02-20", "sold"],
    ["A4", "2022-04-30", "made"],
    ["A5", "2022-03-15", "made"],
    ["A6", null, null],
  ]);
});

test("a company's own components and their ranges can be loaded and used", async () => {
  await files.load(csv([unit("E1", { product_type: "other_equipment" })]));
  expect(
    counts(
      await files.load(
        csv([{ component: "rocker_shaft", name: "Rocker shaft", part_of: "", product_types: "other_equipment" }]),
      ),
    ),
  ).toEqual([1, 1, 0, 0, 0]);
  expect(
    counts(
      await files.load(
        csv([
          { component: "rocker_shaft", name: "Rocker shaft", part_of: "", product_types: "other_equipment dishwasher" },
        ]),
      ),
    ),
  ).toEqual([1, 0, 1, 0, 0]);
  expect(counts(await files.load(csv([job("J1", "E1", { component: "rocker_shaft", symptom: "" })])))).toEqual([
    1, 1, 0, 0, 0,
  ]);
  const range = {
    maker: "Hearth-Wick",
    model: "FW5500",
    check: "pump_winding",
    low: 12,
    high: 16,
    unit: "ohm",
    source: "Sheet",
    mark: "published",
  };
  expect(counts(await files.load(csv([range])))).toEqual([1, 1, 0, 0, 0]);
  expect(counts(await files.load(csv([{ ...range, high: 17 }])))).toEqual([1, 0, 1, 0, 0]);
  expect(problems(await files.load(csv([{ ...range, model: "FW1" }])))).toEqual([
    "2 model is not a model of Hearth-Wick on file",
  ]);
});

test("after loads that overlap, every count equals a count from the rows", async () => {
  await files.load(csv(units));
  await files.load(csv(jobs));
  await files.load(csv([...units.slice(1), unit("X9", { retired_on: "2022-05-01" }), unit("B1", { model: "FW7700" })]));
  await files.load(
    csv([
      job("J1", "A1", { cause: "suds_detergent" }),
      job("J5", "A1"),
      job("J6", "A1"),
      job("J7", "B1", { model: "FW7700" }),
    ]),
  );
  expect((await recount()).map(({ differing }) => differing)).toEqual([0, 0, 0, 0]);
  const {
    unit_windows: windows = [],
    job_cells: cells = [],
    repeated_jobs: repeated = [],
    unplaced_units: unplaced = [],
  } = await stateOfData();
  // Windows: A1 and A2 share one, A3 and B1 have one each. X9 was retired before records begin, J3 has no serial.
  // Cells: J3 and J4 share one; J5 and J6 differ in the failure before. Repeated: the three jobs of A1.
  expect([windows.length, cells.length, repeated.length, unplaced.length]).toEqual([3, 6, 3, 2]);
});
