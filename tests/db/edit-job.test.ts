import { afterAll, beforeEach, expect, test } from "vitest";
import { readOnly } from "@/db/client";
import { closeDatabase } from "@/db/close-database";
import { loadJobHistory } from "@/db/queries/job-history";
import { editJob, liftJobEdit } from "@/db/writes/edit-job";
import { recount } from "@/db/writes/recount";
import { takeBack } from "@/db/writes/take-back";
import { batchOf, csv, fileFolder, job, shopDocument, startAfresh, unit } from "./intake-files";
import { counts } from "./load-outcome";
import { stateOfData } from "./state-of-data";

const files = fileFolder();

beforeEach(async () => {
  await startAfresh();
  await files.load(JSON.stringify(shopDocument));
  await files.load(csv([unit("A1")]));
});
afterAll(async () => {
  files.remove();
  await closeDatabase();
});

const edit = { jobNumber: "J1", column: "cause", value: "foreign_object", by: "Robin", reason: "A coin in the pump." };
const stored = async () => JSON.parse((await stateOfData()).jobs?.[0] ?? "{}") as Record<string, unknown>;

test("a field that was edited here stands against a file, which changes the others and is told of", async () => {
  await files.load(csv([job("J1", "A1", { visits: 1 })]));
  expect(await editJob(edit)).toMatchObject({ kind: "edited" });
  expect(await editJob(edit)).toEqual({ kind: "same" });
  const again = await files.load(csv([job("J1", "A1", { visits: 3 })]), "add", "second.csv");
  expect(counts(again)).toEqual([1, 0, 1, 0, 0]);
  expect(await stored()).toMatchObject({ cause: "foreign_object", visits: 3 });
  expect("report" in again && again.report.keptEdits).toMatchObject([
    { row: 2, noun: "job", name: "J1", column: "cause", before: "foreign_object", after: "component", by: "Robin" },
  ]);
  const history = await readOnly((db) => loadJobHistory(db, "J1"));
  expect(history.fields).toMatchObject([
    { column: "visits", before: "1", after: "3", by: { kind: "file", fileName: "second.csv" } },
    { column: "cause", before: "component", after: "foreign_object", by: { kind: "person", name: "Robin" } },
  ]);
  expect(history.differences).toMatchObject([{ column: "cause", fileValue: "component", fileName: "second.csv" }]);
});

test("a file that differs only in an edited field changes nothing", async () => {
  await files.load(csv([job("J1", "A1")]));
  await editJob(edit);
  const before = await stateOfData();
  expect(counts(await files.load(csv([job("J1", "A1"), job("J2", "A1")])))).toEqual([2, 1, 0, 1, 0]);
  expect((await stateOfData()).jobs?.filter((row) => row.includes('"J1"'))).toEqual(before.jobs);
});

test("lifting the edit brings back what the latest file said", async () => {
  await files.load(csv([job("J1", "A1")]));
  const edited = await editJob(edit);
  await files.load(csv([job("J1", "A1", { cause: "suds_detergent" })]));
  if (edited.kind !== "edited") throw new Error(edited.kind);
  expect(await liftJobEdit({ editId: edited.editId, by: "Sam" })).toBe(true);
  expect(await liftJobEdit({ editId: edited.editId, by: "Sam" })).toBe(false);
  expect(await stored()).toMatchObject({ cause: "suds_detergent" });
  expect((await recount()).filter(({ differing }) => differing > 0)).toEqual([]);
});

test("taking loads back, in either order, leaves the edited field as the person set it", async () => {
  const expected = { cause: "foreign_object", visits: 1 };
  for (const order of [
    [0, 1],
    [1, 0],
  ]) {
    await startAfresh();
    await files.load(JSON.stringify(shopDocument));
    await files.load(csv([unit("A1")]));
    const first = batchOf(await files.load(csv([job("J1", "A1", { visits: 1 })])));
    await editJob(edit);
    const second = batchOf(await files.load(csv([job("J1", "A1", { visits: 2 })])));
    const batches = order.map((place) => [first, second][place] ?? 0);
    await takeBack(batches[0] ?? 0);
    expect(await stored()).toMatchObject(order[0] === 1 ? expected : { ...expected, visits: 2 });
    const last = await takeBack(batches[1] ?? 0);
    expect(last).toMatchObject({ staying: [{ noun: "job", rows: 1, reason: "it was edited by hand since" }] });
    expect((await recount()).filter(({ differing }) => differing > 0)).toEqual([]);
  }
});

test("only fields that a file may change can be edited, and only to values that are allowed", async () => {
  await files.load(csv([job("J1", "A1")]));
  await expect(editJob({ ...edit, column: "unit_id" })).rejects.toThrow(RangeError);
  await expect(editJob({ ...edit, column: "visits", value: -1 })).rejects.toThrow();
  expect(await editJob({ ...edit, jobNumber: "J9" })).toEqual({ kind: "no such job" });
});
