// Facts of units that bear on their cover, by file: they reach a decision, and taking the file back brings back what stood.
import { sql } from "drizzle-orm";
import { afterAll, beforeEach, expect, test } from "vitest";
import { readOnly } from "@/db/client";
import { closeDatabase } from "@/db/close-database";
import { saveRepairSpan, saveUnitFacts } from "@/db/writes/coverage/unit-facts";
import { previewTakeBack, takeBack } from "@/db/writes/take-back";
import { day } from "@/lib/calendar/day";
import { batchOf, csv, fileFolder, shopDocument, startAfresh, unit } from "./intake-files";
import { counts, problems } from "./load-outcome";
import { stateOfData } from "./state-of-data";

const files = fileFolder();
const bought = { sold_on: "2022-03-01", registered_on: "2022-03-20", use: "household", territory: "US-CA" };
let unitsBatch = 0;

beforeEach(async () => {
  await startAfresh();
  await files.load(JSON.stringify(shopDocument));
  unitsBatch = batchOf(await files.load(csv([unit("A1", bought), unit("A2", bought)])));
});
afterAll(async () => {
  files.remove();
  await closeDatabase();
});

const facts = { maker: "Hearth-Wick", serial: "A1", acquired_on: "2022-06-01", transfer_registered_on: "" };

async function unitIdOf(serial: string): Promise<string> {
  const [row] = await readOnly((db) =>
    db.rows<{ id: string }>(sql`select unit_id::text as id from units where serial = ${serial}`),
  );
  return row?.id ?? "";
}

test("registration, use and territory that a register changed are as before once it is taken back", async () => {
  const before = await stateOfData();
  const changed = { ...bought, registered_on: "2022-04-30", use: "commercial", territory: "US-NV" };
  const later = batchOf(await files.load(csv([unit("A1", changed)])));
  expect((await stateOfData()).units).not.toEqual(before.units);
  await takeBack(later);
  expect(await stateOfData()).toEqual(before);
});

test("two files of facts are taken back in either order, each leaving what the other alone would have made", async () => {
  const first = csv([facts]);
  const second = csv([{ ...facts, acquired_on: "2022-06-02", transfer_registered_on: "2022-07-01" }]);
  await files.load(second);
  const secondAlone = (await stateOfData()).unit_facts;
  for (const order of ["later first", "earlier first"]) {
    await startAfresh();
    await files.load(JSON.stringify(shopDocument));
    await files.load(csv([unit("A1", bought), unit("A2", bought)]));
    const nothing = await stateOfData();
    const one = batchOf(await files.load(first));
    const firstAlone = (await stateOfData()).unit_facts;
    const loaded = await files.load(second);
    expect(counts(loaded)).toEqual([1, 0, 1, 0, 0]);
    expect((await stateOfData()).unit_facts).toEqual(secondAlone);
    const two = batchOf(loaded);
    const isLaterFirst = order === "later first";
    await takeBack(isLaterFirst ? two : one);
    expect((await stateOfData()).unit_facts).toEqual(isLaterFirst ? firstAlone : secondAlone);
    await takeBack(isLaterFirst ? one : two);
    expect(await stateOfData()).toEqual(nothing);
  }
});

test("a file that leaves columns out changes nothing in them, and what is set by hand stands", async () => {
  await files.load(csv([{ ...facts, first_used_on: "2022-03-04" }]));
  const id = await unitIdOf("A1");
  await saveUnitFacts({
    unitId: id,
    facts: {
      firstUsedOn: day("2022-03-04"),
      acquiredOn: day("2022-06-09"),
      transferRegisteredOn: undefined,
      exchangedOn: undefined,
      exchangedSerial: undefined,
      serialRemoved: false,
    },
    by: "Robin",
    reason: "Letter of the owner",
  });
  expect(counts(await files.load(csv([{ ...facts, transfer_registered_on: "2022-06-20" }])))).toEqual([1, 0, 1, 0, 0]);
  expect((await stateOfData()).unit_facts).toEqual([
    expect.stringMatching(/"acquired_on": "2022-06-09".*"first_used_on": "2022-03-04".*"2022-06-20"/),
  ]);
});

test("what cannot be true is held with its place: an unknown serial, a transfer before its day, an exchange without one", async () => {
  const rows = [
    { ...facts, serial: "A9" },
    { ...facts, transfer_registered_on: "2022-05-31" },
    { ...facts, serial: "A2", acquired_on: "", exchanged_serial: "B7" },
  ].map((row) => ({ exchanged_serial: "", ...row }));
  expect(problems(await files.load(csv(rows)))).toEqual([
    "2 serial is not the serial of a unit of Hearth-Wick on file",
    "3 transfer_registered_on is before acquired_on, which is 2022-06-01",
    "4 exchanged_on is blank, though exchanged_serial says B7",
  ]);
  await files.load(csv([facts]));
  const early = csv([{ maker: "Hearth-Wick", serial: "A1", transfer_registered_on: "2022-05-01" }]);
  expect(problems(await files.load(early))).toEqual([
    "2 serial would have its transfer registered on 2022-05-01, before it was taken over on 2022-06-01",
  ]);
});

test("a register on whose units something was entered stays for those when it is taken back", async () => {
  const made = batchOf(await files.load(csv([facts])));
  await saveRepairSpan({
    unitId: await unitIdOf("A2"),
    fromOn: day("2022-06-01"),
    untilOn: day("2022-06-04"),
    source: "Hand-over note",
    by: "Robin",
  });
  expect(await previewTakeBack(unitsBatch)).toMatchObject({
    staying: [
      { noun: "unit", reason: "other rows hang on it", examples: ["serial A2"] },
      { noun: "unit", reason: `rows of load ${made} hang on it`, examples: ["serial A1"] },
    ],
  });
  await takeBack(unitsBatch);
  await takeBack(made);
  expect((await stateOfData()).unit_facts).toEqual([]);
  expect((await stateOfData()).units).toHaveLength(1);
});
