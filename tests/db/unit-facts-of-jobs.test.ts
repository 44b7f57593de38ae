import { sql } from "drizzle-orm";
import { afterAll, beforeEach, expect, test } from "vitest";
import { readOnly } from "@/db/client";
import { closeDatabase } from "@/db/close-database";
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

test("the register stands; what a row says otherwise or more is noted with its place", async () => {
  await files.load(csv([unit("A1", { made: "2022-01", sold_on: "", installed_on: "2022-03-01" })]));
  const before = await facts();
  await files.load(csv([first, second]));
  expect(await facts()).toEqual(before);
  expect(await notes()).toEqual([
    {
      row: 2,
      column: "sold_on",
      raw: "2022-02-01",
      note: expect.stringMatching(/^Not taken: the unit is on file without/),
    },
    { row: 3, column: "sold_on", raw: "2022-02-01", note: expect.stringMatching(/^Not taken/) },
    {
      row: 3,
      column: "installed_on",
      raw: "2022-02-03",
      note: expect.stringMatching(/^Differs from the register, which says 2022-03-01\./),
    },
  ]);
});
