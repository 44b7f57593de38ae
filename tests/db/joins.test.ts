import { sql } from "drizzle-orm";
import { afterAll, beforeEach, expect, test } from "vitest";
import { readOnly } from "@/db/client";
import { closeDatabase } from "@/db/close-database";
import { joinJobToUnit } from "@/db/writes/joining/join-job-to-unit";
import { recount } from "@/db/writes/recount";
import { previewTakeBack, takeBack } from "@/db/writes/take-back";
import { batchOf, csv, fileFolder, job, partLine, shopDocument, startAfresh, unit } from "./intake-files";
import { counts } from "./load-outcome";
import { stateOfData } from "./state-of-data";
import { exported, loadExport } from "./table-files";

const files = fileFolder();
const washer = { product_type: "front_load_washer" };

beforeEach(begin);
afterAll(async () => {
  files.remove();
  await closeDatabase();
});

async function begin() {
  await startAfresh();
  await files.load(JSON.stringify(shopDocument));
}

/** Without the placeholder's serialless unit where its job has left it: that is no unit any more. */
async function state() {
  const { units = [], ...rest } = await stateOfData();
  const used = await readOnly((db) => db.rows<{ id: string }>(sql`select distinct unit_id::text as id from jobs`));
  const ids = new Set(used.map(({ id }) => id));
  return {
    ...rest,
    units: units.filter(
      (row) => !row.includes('"identified": false') || ids.has(/"unit_id": (\d+)/.exec(row)?.[1] ?? ""),
    ),
  };
}

const loads = {
  units: csv([unit("A1"), unit("A2")]),
  "without serial": csv([job("J1", "", washer), job("J2", "", washer)]),
  "with serial": csv([job("J1", "A1", washer), job("J2", "Z9", { ...washer, cause: "foreign_object" })]),
  parts: csv([partLine("J1", 1), partLine("J2", 1)]),
} as const;
type Name = keyof typeof loads;

async function loadThese(names: readonly Name[]) {
  const batches = new Map<Name, number>();
  for (const name of names) batches.set(name, batchOf(await files.load(loads[name])));
  return batches;
}

test("a job that comes again with its serial moves to the real unit with everything under it", async () => {
  await loadThese(["units", "without serial", "parts"]);
  const result = await files.load(loads["with serial"]);
  expect(counts(result)).toEqual([2, 0, 2, 0, 0]);
  const joined = await state();
  await begin();
  await loadThese(["units", "with serial", "parts"]);
  expect(joined).toEqual(await state());
  expect((await recount()).filter(({ differing }) => differing > 0)).toEqual([]);
});

/** In which every load is taken back first, second, third and last, but no lines outlive all jobs, which no file alone makes. */
const orders: readonly (readonly Name[])[] = [
  ["with serial", "parts", "without serial", "units"],
  ["without serial", "parts", "with serial", "units"],
  ["units", "without serial", "parts", "with serial"],
  ["parts", "units", "with serial", "without serial"],
];

test("loads of which one gave the serials can be taken back in any order", { timeout: 400_000 }, async () => {
  const all: readonly Name[] = ["units", "without serial", "parts", "with serial"];
  const leftAt = (order: readonly Name[], step: number) =>
    all.filter((name) => !order.slice(0, step + 1).includes(name));
  const expected = new Map<string, Awaited<ReturnType<typeof state>>>();
  for (const left of orders.flatMap((order) => order.map((_, step) => leftAt(order, step)))) {
    if (expected.has(left.join())) continue;
    await begin();
    await loadThese(left.toSorted((a, b) => Number(a === "parts") - Number(b === "parts"))); // lines need their jobs
    expected.set(left.join(), await state());
  }
  await begin();
  for (const order of orders) {
    const batches = await loadThese(all);
    for (const [step, name] of order.entries()) {
      const preview = await previewTakeBack(batches.get(name) ?? 0);
      expect(await takeBack(batches.get(name) ?? 0)).toEqual(preview);
      const left = leftAt(order, step);
      expect(await state(), `took back ${order.slice(0, step + 1).join(", ")}`).toEqual(expected.get(left.join()));
    }
    expect((await recount()).filter(({ differing }) => differing > 0)).toEqual([]);
  }
});

test("a unit that a later load names too holds the job there when the load that joined it is taken back", async () => {
  const batches = await loadThese(["units", "without serial", "with serial"]);
  const upheld = batchOf(await files.load(csv([job("J1", "A1", { ...washer, visits: 2 })])));
  await takeBack(batches.get("with serial") ?? 0);
  const serials = await readOnly((db) =>
    db.rows<{ job: string; serial: string | null }>(
      sql`select job_number as job, serial from jobs join units using (unit_id) order by 1`,
    ),
  );
  expect(serials).toEqual([
    { job: "J1", serial: "A1" },
    { job: "J2", serial: null },
  ]);
  await takeBack(upheld);
  expect((await stateOfData()).jobs?.filter((row) => row.includes('"visits": 1'))).toHaveLength(2);
  expect((await recount()).filter(({ differing }) => differing > 0)).toEqual([]);
});

test("the lines of one file follow their job when the file gives its serial", async () => {
  const line = { Part: "P-1", Qty: 1, "Unit cost": "2.00" };
  await loadExport(files.folder, [exported("J1", "", line)]);
  expect(
    counts(
      await loadExport(files.folder, [exported("J1", "A7", line), exported("J1", "A7", { ...line, Part: "P-2" })]),
    ),
  ).toEqual([2, 0, 2, 0, 0]);
  const found = await state();
  await begin();
  await loadExport(files.folder, [exported("J1", "A7", line), exported("J1", "A7", { ...line, Part: "P-2" })]);
  expect(found).toEqual(await state());
});

test("a person can join a job to its unit, and taking back the loads leaves it there", async () => {
  const batches = await loadThese(["units", "without serial", "parts"]);
  const request = { jobNumber: "J1", maker: "Hearth-Wick", serial: "a1", by: "Robin", reason: "Read from the photo." };
  expect(await joinJobToUnit({ ...request, jobNumber: "J9" })).toEqual({ kind: "no such job" });
  expect(await joinJobToUnit({ ...request, serial: "A9" })).toEqual({ kind: "no such unit" });
  expect(await joinJobToUnit(request)).toMatchObject({ kind: "joined" });
  expect(await joinJobToUnit(request)).toEqual({ kind: "has a serial", serial: "A1" });
  expect((await recount()).filter(({ differing }) => differing > 0)).toEqual([]);
  const taken = await takeBack(batches.get("without serial") ?? 0);
  expect("staying" in taken && taken.staying.filter(({ noun }) => noun === "job")).toMatchObject([
    { rows: 1, examples: ["job J1"], reason: "it was edited by hand since" },
    { rows: 1, examples: ["job J2"] },
  ]);
});
