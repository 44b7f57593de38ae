import { afterAll, beforeEach, expect, test } from "vitest";
import { closeDatabase } from "@/db/close-database";
import { csv, fileFolder, job, partLine, shopDocument, startAfresh, unit } from "./intake-files";

const files = fileFolder();

beforeEach(async () => {
  await startAfresh();
  await files.load(JSON.stringify(shopDocument));
});
afterAll(async () => {
  files.remove();
  await closeDatabase();
});

const counts = (result: Awaited<ReturnType<typeof files.load>>) => {
  if (!("report" in result)) throw new Error(JSON.stringify(result));
  const { rowsTotal, rowsNew, rowsChanged, rowsSame, rowsHeld } = result.report;
  return [rowsTotal, rowsNew, rowsChanged, rowsSame, rowsHeld];
};

const units = [unit("A1"), unit("A2", { sold_on: "2022-02-20" }), unit("A3", { installed_on: "", made: "2022-11" })];
const jobs = [
  job("J1", "A1"),
  job("J2", "A2", { cause: "foreign_object", component: "" }),
  job("J3", "", {}),
  job("J4", "X9"),
];

test("the same bytes twice change nothing and name the first load", async () => {
  const first = await files.load(csv(units), "add", "units.csv");
  expect(counts(first)).toEqual([3, 3, 0, 0, 0]);
  expect(await files.load(csv(units))).toMatchObject({ kind: "loaded before", fileName: "units.csv", rows: 3 });
});

test("an overlapping file adds what is new, changes what differs and leaves the rest", async () => {
  await files.load(csv(units));
  const second = [unit("A1"), unit("A2", { sold_on: "2022-02-21" }), unit("A4")];
  expect(counts(await files.load(csv(second), "dry run"))).toEqual([3, 1, 1, 1, 0]);
  expect(counts(await files.load(csv(second)))).toEqual([3, 1, 1, 1, 0]);
  expect(counts(await files.load(csv([...second, unit("A3", { installed_on: "", made: "2022-11" })])))).toEqual([
    4, 0, 0, 4, 0,
  ]);
});

test("jobs and part lines", async () => {
  await files.load(csv(units));
  expect(counts(await files.load(csv(jobs)))).toEqual([4, 4, 0, 0, 0]);
  expect(counts(await files.load(csv([partLine("J1", 1), partLine("J1", 2)])))).toEqual([2, 2, 0, 0, 0]);
});
