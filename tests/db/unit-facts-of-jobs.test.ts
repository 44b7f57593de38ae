import { sql } from "drizzle-orm";
import { afterAll, beforeEach, expect, test } from "vitest";
import { readOnly } from "@/db/client";
import { closeDatabase } from "@/db/close-database";
import { recount } from "@/db/writes/recount";
import { takeBack } from "@/db/writes/take-back";
import { batchOf, csv, fileFolder, job, type Row, shopDocument, startAfresh, unit } from "./intake-files";
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

const facts = async () =>
  await readOnly((db) =>
    db.rows(
      sql`select serial, made_from as made, sold_on as sold, installed_on as installed from units where serial is not null order by 1`,
    ),
  );
const notes = async () =>
  await readOnly((db) =>
    db.rows<{ row: number; column: string; raw: string; note: string }>(
      sql`select row, "column", raw, note from cell_notes order by batch_id, row, place`,
    ),
  );
const typed: Row = { product_type: "front_load_washer" };
const first = job("J1", "A1", { ...typed, made: "2022-01-05", sold_on: "2022-02-01", installed_on: "" });
const second = job("J2", "A1", { ...typed, made: "", sold_on: "2022-02-01", installed_on: "2022-02-03" });
const other = job("J3", "A1", { ...typed, made: "2022-01-05", sold_on: "2022-02-09", installed_on: "" });

test("a unit that only jobs name has what its rows agree on, in whatever order they come", async () => {
  const states: unknown[] = [];
  for (const rows of [
    [first, second, other],
    [other, second, first],
  ]) {
    await startAfresh();
    await files.load(JSON.stringify(shopDocument));
    const bare = await stateOfData();
    const batch = batchOf(await files.load(csv(rows)));
    expect(await facts()).toEqual([{ serial: "A1", made: "2022-01-05", sold: null, installed: "2022-02-03" }]);
    expect((await notes()).map(({ column, raw }) => `${column} ${raw}`).toSorted()).toEqual([
      "sold_on 2022-02-01",
      "sold_on 2022-02-01",
      "sold_on 2022-02-09",
    ]);
    states.push(await stateOfData());
    await takeBack(batch);
    expect(await stateOfData()).toEqual(bare);
  }
  expect(states[0]).toEqual(states[1]);
});

test("days that are right one by one and wrong together are left out, not refused by the database", async () => {
  await files.load(
    csv([
      { ...first, sold_on: "" },
      { ...second, sold_on: "2022-01-02" },
    ]),
  );
  expect(await facts()).toEqual([{ serial: "A1", made: null, sold: null, installed: "2022-02-03" }]);
  expect((await notes()).map(({ row, column }) => [row, column])).toEqual([
    [2, "made"],
    [3, "sold_on"],
  ]);
});

test("the register stands where it says something; its blanks are filled, each with the row that did", async () => {
  await files.load(csv([unit("A1", { made: "2022-01", sold_on: "", installed_on: "2022-03-01" })]));
  const before = await stateOfData();
  const batch = batchOf(await files.load(csv([first, second])));
  expect(await facts()).toEqual([{ serial: "A1", made: "2022-01-01", sold: "2022-02-01", installed: "2022-03-01" }]);
  const filled = { column: "sold_on", raw: "2022-02-01", note: expect.stringMatching(/^Filled in on the unit/) };
  expect(await notes()).toEqual([
    { ...filled, row: 2 },
    { ...filled, row: 3 },
    {
      row: 3,
      column: "installed_on",
      raw: "2022-02-03",
      note: expect.stringMatching(/^Differs from the register, which says 2022-03-01\./),
    },
  ]);
  await takeBack(batch);
  expect(await stateOfData()).toEqual(before);
});

test("a filled day puts a unit of the register in service, and its counts follow there and back", async () => {
  await files.load(csv([unit("A1", { made: "", installed_on: "" })]));
  const [known, more] = [job("J1", "A1"), { ...job("J1", "A1"), sold_on: "2022-02-01" }];
  await files.load(csv([known]));
  const service = async () =>
    (await readOnly((db) => db.rows(sql`select in_service_on as on, in_service_basis as basis from units`)))[0];
  expect(await service()).toEqual({ on: null, basis: null });
  const batch = batchOf(await files.load(csv([more])));
  expect(await service()).toEqual({ on: "2022-02-01", basis: "sold" });
  expect((await recount()).filter(({ differing }) => differing > 0)).toEqual([]);
  await takeBack(batch);
  expect(await service()).toEqual({ on: null, basis: null });
  expect((await recount()).filter(({ differing }) => differing > 0)).toEqual([]);
});

test("what two loads fill in alike stays until both are taken back, in either order", async () => {
  for (const order of [
    [0, 1],
    [1, 0],
  ]) {
    await startAfresh();
    await files.load(JSON.stringify(shopDocument));
    await files.load(csv([unit("A1", { sold_on: "" })]));
    const bare = await stateOfData();
    const batches = [
      batchOf(await files.load(csv([second]))),
      batchOf(await files.load(csv([{ ...second, job_number: "J5" }]))),
    ];
    await takeBack(batches[order[0] ?? 0] ?? 0);
    expect(await facts()).toMatchObject([{ sold: "2022-02-01" }]);
    await takeBack(batches[order[1] ?? 0] ?? 0);
    expect(await stateOfData()).toEqual(bare);
  }
});

test("rows that say different things, or what contradicts the register, fill nothing and are noted", async () => {
  await files.load(
    csv([unit("A1", { sold_on: "" }), unit("A2", { made: "2022-05", sold_on: "", installed_on: "2022-06-01" })]),
  );
  const before = await facts();
  await files.load(csv([first, other, { ...second, job_number: "J4", serial: "A2", installed_on: "" }]));
  expect(await facts()).toEqual(before);
  expect((await notes()).map(({ row, note }) => [row, note.slice(0, 9)])).toEqual([
    [2, "Not taken"],
    [3, "Not taken"],
    [4, "Not taken"],
  ]);
});
