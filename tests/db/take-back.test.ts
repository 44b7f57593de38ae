import { sql } from "drizzle-orm";
import { afterAll, beforeEach, describe, expect, test } from "vitest";
import { closeDatabase } from "@/db/close-database";
import { inTransaction } from "@/db/in-transaction";
import { previewTakeBack, takeBack } from "@/db/writes/take-back";
import { batchOf, csv, fileFolder, job, partLine, shopDocument, startAfresh, unit } from "./intake-files";
import { stateOfData } from "./state-of-data";

const files = fileFolder();
const washer = { product_type: "front_load_washer" };

/** Loads that overlap: each stands by itself, and each names rows that another names too, alike or otherwise. */
const loads = {
  units: csv([unit("A1"), unit("A2", { sold_on: "2022-02-20" }), unit("A3", { installed_on: "", made: "2022-11" })]),
  "more units": csv([
    unit("A2", { sold_on: "2022-02-21" }),
    unit("A3", { installed_on: "", made: "2022-11" }),
    unit("X9"),
    unit("B5", { model: "FW7700" }),
  ]),
  jobs: csv([
    job("J1", "A1", washer),
    job("J2", "A2", { ...washer, requested_on: "2023-07-01", completed_on: "2023-07-02" }),
    job("J3", "", washer),
    job("J4", "X9", washer),
  ]),
  "more jobs": csv([
    job("J1", "A1", { ...washer, cause: "foreign_object" }),
    job("J3", "", washer),
    job("J5", "A2", washer),
    job("J6", "X9", { ...washer, component: "door_lock" }),
  ]),
} as const;
type Name = keyof typeof loads;
const names = Object.keys(loads) as Name[]; // Object.keys loses the key type

beforeEach(begin);
afterAll(async () => {
  files.remove();
  await closeDatabase();
});

async function begin() {
  await startAfresh();
  await files.load(JSON.stringify(shopDocument));
}

async function loadThese(these: readonly Name[]): Promise<Map<Name, number>> {
  const batches = new Map<Name, number>();
  for (const name of these) batches.set(name, batchOf(await files.load(loads[name])));
  return batches;
}

/** Every load is taken back first, second, third and last, and right after each of the others; `npm run soak -- orders` takes all 24. */
const fewOrders: readonly (readonly Name[])[] = [
  ["units", "more units", "more jobs", "jobs"],
  ["more units", "jobs", "units", "more jobs"],
  ["jobs", "more jobs", "more units", "units"],
  ["more jobs", "units", "jobs", "more units"],
];
const orders = process.env.EVERY_ORDER === undefined ? fewOrders : ordersOf(names);

function ordersOf(these: readonly Name[]): readonly (readonly Name[])[] {
  if (these.length === 0) return [[]];
  return these.flatMap((first) => ordersOf(these.filter((name) => name !== first)).map((rest) => [first, ...rest]));
}

/** What the data say after loading only these files into an empty database: found once for each choice. */
const expected = new Map<string, Awaited<ReturnType<typeof stateOfData>>>();

test("in whichever order loads are taken back, what is left is what the other files alone would have made", async () => {
  for (const order of orders) {
    for (const [step] of order.entries()) {
      const left = names.filter((name) => !order.slice(0, step + 1).includes(name));
      if (expected.has(left.join())) continue;
      await begin();
      await loadThese(left);
      expected.set(left.join(), await stateOfData());
    }
  }
  await begin();
  for (const order of orders) {
    const batches = await loadThese(names); // all of the order before is taken back, which its last comparison has shown
    for (const [step, name] of order.entries()) {
      await takeBack(batches.get(name) ?? 0);
      const left = names.filter((other) => !order.slice(0, step + 1).includes(other));
      expect(await stateOfData(), `took back ${order.join(", ")}; left ${left.join(", ")}`).toEqual(
        expected.get(left.join()),
      );
    }
  }
});

describe("one load", () => {
  test("the preview names the same rows as the taking back, and changes nothing", async () => {
    const batches = await loadThese(names);
    const before = await stateOfData();
    const preview = await previewTakeBack(batches.get("jobs") ?? 0);
    expect(await stateOfData()).toEqual(before);
    expect(preview).toMatchObject({
      removed: [{ noun: "job", rows: 2, examples: ["job J2", "job J4"] }],
      returned: [],
      staying: [
        {
          noun: "unit",
          rows: 1,
          examples: ["a unit without a serial"],
          reason: `rows of load ${batches.get("more jobs")} hang on it`,
        },
        {
          noun: "job",
          rows: 2,
          examples: ["job J1", "job J3"],
          reason: `load ${batches.get("more jobs")} names it too`,
        },
      ],
    });
    expect(await takeBack(batches.get("jobs") ?? 0)).toEqual(preview);
    expect(await takeBack(batches.get("jobs") ?? 0)).toEqual({ kind: "taken back before" });
    expect(await takeBack(999)).toEqual({ kind: "no such load" });
  });

  test("the same file can be loaded again after it was taken back", async () => {
    const batches = await loadThese(["units"]);
    const before = await stateOfData();
    await takeBack(batches.get("units") ?? 0);
    await loadThese(["units"]);
    expect(await stateOfData()).toEqual(before);
  });

  test("jobs stay for as long as part lines of another load hang on them, and go with those", async () => {
    const batches = await loadThese(["units", "jobs"]);
    const parts = batchOf(await files.load(csv([partLine("J1", 1)])));
    await takeBack(batches.get("units") ?? 0);
    await takeBack(batches.get("jobs") ?? 0);
    const state = await stateOfData();
    expect(state.jobs).toHaveLength(1);
    expect(state.units).toHaveLength(1);
    await takeBack(parts);
    expect(await stateOfData()).toMatchObject({
      jobs: [],
      units: [],
      models: [],
      makers: [],
      part_lines: [],
      job_cells: [],
    });
  });

  test("a row that a hand has changed since stays as the hand left it", async () => {
    const batches = await loadThese(["units", "jobs"]);
    await inTransaction(
      async (tx) =>
        void (await tx.execute(sql`update jobs set correction = 'By hand', batch_id = null where job_number = 'J1'`)),
    );
    const result = await takeBack(batches.get("jobs") ?? 0);
    expect(result).toMatchObject({
      staying: [{ noun: "job", rows: 1, reason: "it was changed by hand since", examples: ["job J1"] }],
    });
    expect((await stateOfData()).jobs).toEqual([expect.stringContaining("By hand")]);
  });
});

test("taking back a change of the company's grace moves the units back", async () => {
  await loadThese(["units"]);
  const before = await stateOfData();
  const batch = batchOf(await files.load(JSON.stringify({ ...shopDocument, madeGraceMonths: 9 })));
  expect((await stateOfData()).unit_windows).not.toEqual(before.unit_windows);
  await takeBack(batch);
  expect(await stateOfData()).toEqual(before);
});
