import { afterAll, beforeEach, describe, expect, test } from "vitest";
import { closeDatabase } from "@/db/close-database";
import { recount } from "@/db/writes/recount";
import { csv, fileFolder, job, shopDocument, startAfresh, unit } from "./intake-files";
import { counts, problems } from "./load-outcome";
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

const _washer = { product_type: "front_load_washer" };
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
  expect((await recount()).filter(({ differing }) => differing > 0)).toEqual([]);
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
