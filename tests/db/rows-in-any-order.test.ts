import { sql } from "drizzle-orm";
import { afterAll, beforeEach, expect, test } from "vitest";
import { readOnly } from "@/db/client";
import { closeDatabase } from "@/db/close-database";
import { fileFolder, type Row, shopDocument, startAfresh } from "./intake-files";
import { counts } from "./load-outcome";
import { stateOfData } from "./state-of-data";
import { exported, loadExport, matching } from "./table-files";

const files = fileFolder();
beforeEach(async () => {
  await startAfresh();
  await files.load(JSON.stringify(shopDocument));
});
afterAll(async () => {
  files.remove();
  await closeDatabase();
});

/** By what must be so: rows of one maker, as serial, model and kind, and those of them that are held. */
const cases: Readonly<Record<string, readonly [rows: readonly (readonly string[])[], held: readonly number[]]>> = {
  "a row without model and kind takes the kind from another row of its serial": [
    [
      ["A1", "", ""],
      ["A1", "FW5500", "W/M"],
    ],
    [],
  ],
  "and what it tells of its model helps a third": [
    [
      ["A1", "FW77", "W/M"],
      ["A1", "FW7788", ""],
      ["A3", "FW7788", ""],
    ],
    [],
  ],
  "a serial with two models stays contested when a row without a model brings it in": [
    [
      ["A1", "FW5500", "W/M"],
      ["A1", "KZ-90", "W/M"],
      ["A1", "", "W/M"],
    ],
    [0, 1],
  ],
  "or a row with the beginning that both share": [
    [
      ["A1", "FW5500AA", "W/M"],
      ["A1", "FW5500BB", "W/M"],
      ["A1", "FW5500", "W/M"],
    ],
    [0, 1],
  ],
  "a model is of the kind that most of its rows give": [
    [
      ["A1", "FW5500", "electric_dryer"],
      ["A2", "FW5500", "W/M"],
      ["A3", "FW5500", "W/M"],
    ],
    [0],
  ],
  "of no kind where as many rows give another": [
    [
      ["A1", "FW5500", "electric_dryer"],
      ["A2", "FW5500", "W/M"],
      ["A3", "FW5500", ""],
    ],
    [0, 1, 2],
  ],
  "one serial is not two kinds of appliance": [
    [
      ["A1", "", "electric_dryer"],
      ["A1", "", "W/M"],
    ],
    [0, 1],
  ],
};
const made = Object.entries(cases).map(([must, [rows, held]], place) => {
  const number = (row: number) => `C${place}-${row}`;
  return {
    must,
    name: `C${place}`,
    held: held.map(number),
    rows: rows.map(
      ([serial = "", model = "", type = ""], row): Row =>
        exported(number(row), serial, { Brand: `Maker ${place}`, Model: model, Type: type, Component: "" }),
    ),
  };
});

const words = { ...matching.words, product_type: { "w/m": "front_load_washer", electric_dryer: "electric_dryer" } };

// Each of these once depended on the order of rows, or on what an earlier load had left behind. All that a file's rows
// tell of each other they tell at once, and no more when they come again.
test("rows of one file mean the same in whatever order, and nothing new when they come again", async () => {
  const rows = made.flatMap((each) => each.rows);
  const states: unknown[] = [];
  for (const order of [rows, rows.toReversed()]) {
    await startAfresh();
    await files.load(JSON.stringify(shopDocument));
    const first = await loadExport(files.folder, order, "add and set aside", { words });
    const held = await readOnly((db) =>
      db.rows<{ job: string }>(sql`select cells ->> 'Job #' as job from held_rows order by 1`),
    );
    for (const each of made)
      expect(
        held.map(({ job }) => job).filter((job) => job.startsWith(`${each.name}-`)),
        each.must,
      ).toEqual(each.held);
    states.push(await stateOfData());
    const again = await loadExport(files.folder, order.toReversed(), "add and set aside", { words });
    expect(counts(again).slice(1, 3)).toEqual([0, 0]);
    expect(counts(again)[4]).toBe(counts(first)[4]);
  }
  expect(states[0]).toEqual(states[1]);
});

test("a unit gets the fullest model number that its rows give", async () => {
  const rows = ["FW55", "FW5500A", "FW5500", ""].map((model, index) => exported(`J${index}`, "A1", { Model: model }));
  await loadExport(files.folder, rows);
  const models = await readOnly((db) => db.rows(sql`select number from units join models using (model_id)`));
  expect(models).toEqual([{ number: "FW5500A" }]);
});
