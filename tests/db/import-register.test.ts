import { afterAll, beforeEach, describe, expect, test } from "vitest";
import { closeDatabase } from "@/db/close-database";
import { csv, fileFolder, job, partLine, shopDocument, startAfresh, unit } from "./intake-files";
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

const washer = { product_type: "front_load_washer" };
const units = [unit("A1"), unit("A2", { sold_on: "2022-02-20" }), unit("A3", { installed_on: "", made: "2022-11" })];
const jobs = [
  job("J1", "A1"),
  job("J2", "A2", { cause: "foreign_object", component: "" }),
  job("J3", ""),
  job("J4", "X9"),
];
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
      "3 job_number names the same job as row 4, with other values",
      "4 job_number names the same job as row 3, with other values",
      "5 component is not a component of the kind front_load_washer",
      "6 job_number is the number of the job in row 7, which names another unit",
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
