import { sql } from "drizzle-orm";
import { afterAll, beforeAll, expect, test } from "vitest";
import { readOnly } from "@/db/client";
import { closeDatabase } from "@/db/close-database";
import { type JobFilter, loadJobList } from "@/db/queries/job-list";
import { keptRecordCounts, loadRecordCounts } from "@/db/queries/record-counts";
import { loadUnitList } from "@/db/queries/unit-list";
import { editJob } from "@/db/writes/edit-job";
import { takeBack } from "@/db/writes/take-back";
import { batchOf, csv, fileFolder, job, shopDocument, startAfresh, unit } from "./intake-files";

const files = fileFolder();
const modelOf = (serial: string) => (serial < "S30" ? "FW5500" : "FW6600");
beforeAll(async () => {
  await startAfresh();
  await files.load(JSON.stringify(shopDocument));
  const serials = Array.from({ length: 60 }, (_, n) => `S${String((n * 37) % 60).padStart(2, "0")}`);
  await files.load(csv([...serials, "NEVER1", "NEVER2"].map((serial) => unit(serial, { model: modelOf(serial) }))));
  // Two to three jobs a unit, many on one day, some void after the last closed one, some of no unit that is known.
  const jobs = serials.flatMap((serial, n) => {
    const on = (k: number) => `2023-0${1 + ((n + 4 * k) % 9)}-1${n % 3}`;
    const made = (k: number, more = {}) =>
      job(`J${n}-${k}`, serial, {
        requested_on: on(k),
        completed_on: on(k),
        model: modelOf(serial),
        status: "closed",
        ...more,
      });
    return [
      made(1),
      made(2, n % 2 === 0 ? { component: "door_lock" } : {}),
      made(3, { status: "void", completed_on: "2024-03-01" }),
    ];
  });
  const nobodys = Array.from({ length: 9 }, (_, n) =>
    job(`N${n}`, "", { completed_on: "2023-09-30", status: "closed" }),
  );
  expect(await files.load(csv([...jobs, ...nobodys]))).toMatchObject({ kind: "added" });
}, 60_000);
afterAll(async () => {
  files.remove();
  await closeDatabase();
});

// By definition: every unit with its own jobs looked up, sorted as text and days compare.
test("every page of units is that part of the list of all of them by last closed job, however few jobs tell it", async () => {
  const all = await readOnly((db) =>
    db.rows<{ serial: string; jobs: number; last: string | null }>(sql`
      select u.serial, (select count(*)::int from jobs j where j.unit_id = u.unit_id and j.status = 'closed') as jobs,
        (select max(completed_on)::text from jobs j where j.unit_id = u.unit_id and j.status = 'closed') as last
      from units u where u.identified`),
  );
  const expected = all
    .toSorted((a, b) => (b.last ?? "").localeCompare(a.last ?? "") || a.serial.localeCompare(b.serial, "en"))
    .map(({ serial, jobs, last }) => [serial, jobs, last ?? undefined]);
  for (const [offset, limit] of [
    [0, 1],
    [0, 5],
    [7, 5],
    [30, 20],
    [55, 5],
    [58, 5],
    [60, 50],
    [0, 500],
  ] as const) {
    const { rows, total } = await readOnly((db) => loadUnitList(db, undefined, { offset, limit }));
    expect(total).toBe(62);
    expect(
      rows.map((row) => [row.serial, row.jobs, row.lastJobOn]),
      `from ${offset}`,
    ).toEqual(expected.slice(offset, offset + limit));
  }
});

test("words narrow the units and keep their order", async () => {
  const { rows, total } = await readOnly((db) => loadUnitList(db, "fw66", { offset: 0, limit: 100 }));
  const { rows: everything } = await readOnly((db) => loadUnitList(db, undefined, { offset: 0, limit: 100 }));
  expect(total).toBe(30);
  expect(rows).toEqual(everything.filter(({ model }) => model === "FW6600"));
});

const filters: readonly JobFilter[] = [
  {},
  { component: "door_lock" },
  { maker: "Hearth-Wick" },
  { model: "FW6600", component: "drain_pump" },
  { productType: "front_load_washer", words: "J1" },
  { ageDays: { from: 300, until: 500 } },
  { counted: "failures" },
  { counted: "calls", model: "FW5500" },
  { words: "S1" },
];

test.each(filters)("the count of jobs under %o is that of its rows, and pages make up the whole", async (filter) => {
  const { total, rows } = await readOnly((db) => loadJobList(db, filter, { offset: 0, limit: undefined }));
  expect(total).toBe(rows.length);
  expect(total).toBeGreaterThan(0);
  const pages = await readOnly(async (db) => [
    ...(await loadJobList(db, filter, { offset: 0, limit: 7 })).rows,
    ...(await loadJobList(db, filter, { offset: 7, limit: 7 })).rows,
  ]);
  expect(pages).toEqual(rows.slice(0, 14));
});

// Against counting anew, after each way in which a job or unit comes or goes.
test("counts that are kept are those of the rows at once after a load, an edit and a taking back", async () => {
  const counts = async () => {
    const both = await readOnly(async (db) => [await keptRecordCounts(db), await loadRecordCounts(db)]);
    expect(both[0]).toEqual(both[1]);
    return both[0];
  };
  const before = await counts();
  expect(await counts()).toBe(before); // the very answer that was kept
  const loaded = batchOf(await files.load(csv([unit("LATE", { model: "FW5500" })])));
  const jobs = batchOf(await files.load(csv([job("LATE1", "LATE", { completed_on: "2024-01-02" })])));
  expect(await counts()).toEqual({ jobs: 190, closedJobs: 130, units: 63 });
  await editJob({ jobNumber: "J0-1", column: "cause_note", value: "worn", by: "Kim", reason: "as the note says" });
  await counts();
  await takeBack(jobs);
  await takeBack(loaded);
  expect(await counts()).toEqual(before);
});
