import { afterAll, beforeEach, expect, test } from "vitest";
import { readOnly } from "@/db/client";
import { closeDatabase } from "@/db/close-database";
import { loadMostFailingPart } from "@/db/queries/most-failing-part";
import { loadWhatIsCounted } from "@/db/queries/what-is-counted";
import { batchOf, csv, fileFolder, job, type Row, shopDocument, startAfresh, unit } from "./intake-files";

const files = fileFolder();

beforeEach(async () => {
  await startAfresh();
  await files.load(JSON.stringify(shopDocument));
});
afterAll(async () => {
  files.remove();
  await closeDatabase();
});

const load = async (rows: readonly Row[]) => {
  const columns = [...new Set(rows.flatMap((row) => Object.keys(row)))];
  batchOf(await files.load(csv(rows, columns), "add and set aside"));
};

test("an empty company has counted nothing and left nothing out", async () => {
  const { registered, jobs, ...rest } = await readOnly(loadWhatIsCounted);
  expect(registered).toEqual([]);
  expect(rest).toEqual({ knownFromJobsOnly: 0, neverWatched: 0 });
  expect(new Set(Object.values(jobs))).toEqual(new Set([0]));
  expect(await readOnly(loadMostFailingPart)).toBeUndefined();
});

// By hand: the shop's records begin on 1 June 2022; each row is one of the reasons.
test("every unit and job is counted once under what it is", async () => {
  await load([
    unit("A1"),
    unit("A2", { installed_on: "", sold_on: "2022-03-01" }),
    unit("A3", { installed_on: "", made: "" }),
    unit("A4", { retired_on: "2024-01-01" }),
    unit("A5", { installed_on: "2021-01-01", made: "2020-11", retired_on: "2022-01-01" }),
  ]);
  await load([
    job("F1", "A1"),
    job("F2", "A2", { requested_on: "2023-06-01", completed_on: "2023-06-02" }),
    job("C1", "A1", { cause: "foreign_object", component: "" }),
    job("C2", "A1", { cause: "component", component: "" }),
    job("C3", "A1", { cause: "not_determined" }),
    job("V1", "A1", { status: "void" }),
    job("S1", ""),
    job("N1", "A3"),
    job("X1", "NOT-IN-REGISTER"),
    job("B1", "A1", { requested_on: "2022-05-01", completed_on: "2022-05-02" }),
    job("R1", "A4", { requested_on: "2024-02-01", completed_on: "2024-02-02" }),
    job("W1", "A1", { completed_on: "not a day" }),
  ]);
  const { registered, jobs, ...rest } = await readOnly(loadWhatIsCounted);
  expect(registered).toEqual([
    { basis: "installed", units: 3 },
    { basis: "sold", units: 1 },
    { basis: undefined, units: 1 },
  ]);
  expect(rest).toEqual({ knownFromJobsOnly: 1, neverWatched: 1 });
  expect(jobs).toEqual({
    onRecord: 11,
    countedAsNothing: 1,
    closed: 10,
    failures: 7,
    withoutSerial: 1,
    withoutExposure: 3,
    beforeRecords: 1,
    afterRetirement: 1,
    withoutComponent: 1,
    causeNotDetermined: 1,
    rowsSetAside: 1,
  });
  expect(await readOnly(loadMostFailingPart)).toMatchObject({ model: "FW5500", component: "drain_pump" });
});
