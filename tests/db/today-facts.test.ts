import { afterAll, beforeEach, expect, test } from "vitest";
import { readOnly } from "@/db/client";
import { closeDatabase } from "@/db/close-database";
import { loadRecordCounts } from "@/db/queries/record-counts";
import { loadTodayFacts } from "@/db/queries/today";
import { takeBack } from "@/db/writes/take-back";
import { batchOf, csv, fileFolder, job, shopDocument, startAfresh, unit } from "./intake-files";

const files = fileFolder();
const facts = () =>
  readOnly(async (db) =>
    loadTodayFacts(db, { timeZone: shopDocument.timeZone, draftLimit: 20, counts: await loadRecordCounts(db) }),
  );

beforeEach(startAfresh);
afterAll(async () => {
  files.remove();
  await closeDatabase();
});

test("an empty database has nothing loaded, nothing held, nothing due", async () => {
  expect(await facts()).toEqual({ closedJobs: 0, units: 0, lastLoad: undefined, held: [], drafts: [] });
});

test("counts what was taken in, names the last load and the rows it set aside, and forgets a load taken back", async () => {
  await files.load(JSON.stringify(shopDocument));
  await files.load(csv([unit("A1"), unit("A2")]), "add", "units.csv");
  const jobs = [job("J1", "A1"), job("J2", "A2", { completed_on: "2023-02-30" }), job("J3", "")];
  const batchId = batchOf(await files.load(csv(jobs), "add and set aside", "jobs.csv"));

  const loaded = await facts();
  expect(loaded).toMatchObject({ closedJobs: 2, units: 2, lastLoad: { fileName: "jobs.csv", rows: 3 } });
  expect(loaded.held).toEqual([{ batchId, fileName: "jobs.csv", rows: 1 }]);
  expect(loaded.lastLoad?.on).toMatch(/^\d{4}-\d{2}-\d{2}$/);

  await takeBack(batchId);
  expect(await facts()).toMatchObject({ closedJobs: 0, units: 2, lastLoad: { fileName: "units.csv" }, held: [] });
});
