// A day of a unit that came to light later, such as the purchase on a receipt: set by hand, judged anew, kept against files.
import { sql } from "drizzle-orm";
import { afterAll, beforeEach, expect, test } from "vitest";
import { readOnly } from "@/db/client";
import { closeDatabase } from "@/db/close-database";
import { loadUnit } from "@/db/queries/unit";
import { loadUnitFacts } from "@/db/queries/unit-facts";
import { saveUnitFacts } from "@/db/writes/coverage/unit-facts";
import { saveUnitRegister } from "@/db/writes/coverage/unit-register";
import { day } from "@/lib/calendar/day";
import { startWithJobs } from "./claims/claim-files";
import { csv, fileFolder, unit } from "./intake-files";

const files = fileFolder();
const told = { by: "Robin", reason: "Receipt" };

beforeEach(() => startWithJobs(files));
afterAll(async () => {
  files.remove();
  await closeDatabase();
});

async function unitId(): Promise<string> {
  const [row] = await readOnly((db) =>
    db.rows<{ id: string }>(sql`select unit_id::text as id from units where serial = 'A1'`),
  );
  return row?.id ?? "";
}

/** Covered work of the unit that nobody has claimed, as the list of missed work holds it. */
const missed = () =>
  readOnly((db) =>
    db.rows<{ job: string }>(sql`select job_number as job from unclaimed_work join jobs using (unit_id, job_id)`),
  );

test("a purchase day from a receipt makes covered work appear, and taking it back makes it vanish", async () => {
  const id = await unitId();
  expect(await saveUnitRegister({ unitId: id, changes: { sold_on: null, installed_on: null }, ...told })).toBe(2);
  expect(await missed()).toEqual([]);
  expect(await saveUnitRegister({ unitId: id, changes: { sold_on: day("2022-09-05") }, ...told })).toBe(1);
  expect(await missed()).toEqual([{ job: "J1" }]);
  const found = await readOnly((db) => loadUnit(db, id));
  expect(found).toMatchObject({ inServiceOn: "2022-09-05", inServiceBasis: "sold" });
  expect(await saveUnitRegister({ unitId: id, changes: { sold_on: day("2022-09-05") }, ...told })).toBe(0);
  const { edits } = await readOnly((db) => loadUnitFacts(db, id));
  expect(edits.map(({ columnName, valueBefore, value, by }) => [columnName, valueBefore, value, by])).toEqual([
    ["sold_on", null, "2022-09-05", "Robin"],
    ["installed_on", "2022-09-02", null, "Robin"],
    ["sold_on", "2022-09-01", null, "Robin"],
  ]);
});

test("a file that says otherwise passes the field by and says so", async () => {
  const id = await unitId();
  await saveUnitRegister({ unitId: id, changes: { sold_on: day("2022-09-05"), owner_number: 2 }, ...told });
  await files.load(csv([unit("A1", { sold_on: "2022-08-01", installed_on: "2022-09-06", territory: "US-OH" })]));
  const found = await readOnly((db) => loadUnit(db, id));
  expect(found?.unit).toMatchObject({
    soldOn: "2022-09-05",
    installedOn: "2022-09-06",
    territory: "US-OH",
    ownerNumber: 2,
  });
});

test("other facts of the unit are judged anew too", async () => {
  const id = await unitId();
  const facts = {
    firstUsedOn: undefined,
    acquiredOn: undefined,
    transferRegisteredOn: undefined,
    exchangedOn: undefined,
    exchangedSerial: undefined,
  };
  await saveUnitFacts({ unitId: id, facts: { ...facts, serialRemoved: true }, ...told });
  expect(await missed()).toEqual([]);
  await saveUnitFacts({ unitId: id, facts: { ...facts, serialRemoved: false }, ...told });
  expect(await missed()).toEqual([{ job: "J1" }]);
});

test("a day that contradicts the unit is refused by the database, and nothing is half done", async () => {
  const id = await unitId();
  const changes = { registered_on: day("2022-09-05"), sold_on: day("2021-12-31") }; // made in January 2022
  await expect(saveUnitRegister({ unitId: id, changes, ...told })).rejects.toThrow();
  expect((await readOnly((db) => loadUnit(db, id)))?.unit.registeredOn).toBeUndefined();
  await expect(saveUnitRegister({ unitId: id, changes, by: " ", reason: "x" })).rejects.toThrow(RangeError);
});
