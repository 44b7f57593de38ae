import { sql } from "drizzle-orm";
import { afterAll, beforeEach, expect, test } from "vitest";
import { readOnly } from "@/db/client";
import { closeDatabase } from "@/db/close-database";
import { loadCallbacksOfBatch, loadCallbacksOfJob } from "@/db/queries/callbacks";
import { editJobField } from "@/db/writes/edit-job-field";
import { recount } from "@/db/writes/recount";
import { takeBack } from "@/db/writes/take-back";
import { addDays, day } from "@/lib/calendar/day";
import { decideRepeat } from "@/lib/coverage/decide-repeat";
import { batchOf, csv, fileFolder, job, shopDocument, startAfresh, unit } from "./intake-files";

const files = fileFolder();

beforeEach(async () => {
  await startAfresh();
  await files.load(JSON.stringify(shopDocument));
  await files.load(csv([unit("A1"), unit("A2")]));
});
afterAll(async () => {
  files.remove();
  await closeDatabase();
});

const suggestions = async () =>
  await readOnly((db) =>
    db.rows<{ job: string; of: string; days: number }>(
      sql`select j.job_number as job, s.callback_of as of, s.days from suggested_callbacks s join jobs j using (unit_id, job_id) order by 1`,
    ),
  );
const jobOn = (number: string, reported: string, done: string, more = {}) =>
  job(number, "A1", { requested_on: reported, completed_on: done, callback_of: "", ...more });

// By definition with separate code: the claim room's own rule for a second repair, asked for each pair of days.
test("a job counts as a return exactly where the rule of the claim room calls it a repeat", async () => {
  const done = day("2023-05-03");
  const rows = [jobOn("J0", "2023-05-01", done)];
  const expected: { job: string; of: string; days: number }[] = [];
  for (const days of [0, 29, 30, 31]) {
    await startAfresh();
    await files.load(JSON.stringify(shopDocument));
    await files.load(csv([unit("A1")]));
    const reportedOn = addDays(done, days);
    await files.load(csv([...rows, jobOn("J1", reportedOn, addDays(reportedOn, 2))]));
    const trouble = { component: "drain_pump", symptom: "will_not_drain" };
    const decision = decideRepeat({
      rule: { within: { n: 30, unit: "day" }, same: "component" },
      previousCompletedOn: done,
      reportedOn,
      previous: trouble,
      now: trouble,
    });
    const found = await suggestions();
    expect(found, `${days} days`).toEqual(
      decision.kind === "repeat_within_window" ? [{ job: "J1", of: "J0", days }] : [],
    );
    expected.push(...found);
  }
  expect(expected.map(({ days }) => days)).toEqual([0, 29, 30]);
});

test("another component, another unit, a void job, or a file that says so itself makes no suggestion", async () => {
  await files.load(
    csv([
      jobOn("J0", "2023-05-01", "2023-05-03"),
      jobOn("J1", "2023-05-10", "2023-05-11", { component: "door_lock", symptom: "" }),
      job("J2", "A2", { requested_on: "2023-05-10", completed_on: "2023-05-11" }),
      jobOn("J3", "2023-05-12", "2023-05-13", { callback_of: "J0" }),
    ]),
  );
  expect(await suggestions()).toEqual([]);
});

test("suggestions come and go with the loads that they rest on", async () => {
  const first = batchOf(await files.load(csv([jobOn("J0", "2023-05-01", "2023-05-03")])));
  await files.load(csv([jobOn("J1", "2023-05-10", "2023-05-11")]));
  expect(await suggestions()).toEqual([{ job: "J1", of: "J0", days: 7 }]);
  expect((await recount()).filter(({ differing }) => differing > 0)).toEqual([]);
  await takeBack(first);
  expect(await suggestions()).toEqual([]);
});

test("the company's own repeat days hold, and a document that does not name them leaves them", async () => {
  await files.load(csv([jobOn("J0", "2023-05-01", "2023-05-03"), jobOn("J1", "2023-05-13", "2023-05-14")]));
  const shop = await files.load(JSON.stringify({ ...shopDocument, repeatDays: 9 }));
  expect(await suggestions()).toEqual([]);
  await files.load(JSON.stringify({ ...shopDocument, madeGraceMonths: 4 }));
  expect(await suggestions()).toEqual([]);
  await files.load(JSON.stringify({ ...shopDocument, repeatDays: 10 }));
  expect(await suggestions()).toEqual([{ job: "J1", of: "J0", days: 10 }]);
  expect((await takeBack(batchOf(shop))).kind).toBe("taken back");
});

test("both jobs of a suggestion tell of it, and the load that brought the later one", async () => {
  await files.load(csv([jobOn("J0", "2023-05-01", "2023-05-03")]));
  const batch = batchOf(await files.load(csv([jobOn("J1", "2023-05-10", "2023-05-12")])));
  const suggestion = { jobNumber: "J1", earlier: "J0", days: 7 };
  for (const number of ["J0", "J1"])
    expect(await readOnly((db) => loadCallbacksOfJob(db, number))).toEqual([suggestion]);
  expect(await readOnly((db) => loadCallbacksOfBatch(db, batch, 10))).toMatchObject({ total: 1, rows: [suggestion] });
  await editJobField({ jobNumber: "J1", field: "callback_of", text: "J0", by: "Robin", reason: "The paper." });
  expect(await readOnly((db) => loadCallbacksOfJob(db, "J1"))).toEqual([]);
});
