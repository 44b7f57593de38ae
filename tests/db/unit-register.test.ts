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
import { samplePolicy } from "../coverage/sample-policy";
import { csv, fileFolder, job, partLine, shopDocument, startAfresh, unit } from "./intake-files";

const files = fileFolder();
const told = { by: "Robin", reason: "Receipt of 1 March 2022" };

beforeEach(async () => {
  await startAfresh();
  await files.load(JSON.stringify(shopDocument));
  const policy = samplePolicy({ maker: "Hearth-Wick", start: { from: { event: "purchase" }, fallbacks: [] } });
  await files.load(JSON.stringify([policy]));
  await files.load(csv([unit("A1", { sold_on: "", installed_on: "" })]));
  await files.load(csv([job("J1", "A1", { requested_on: "2022-06-05", completed_on: "2022-06-08" })]));
  await files.load(csv([partLine("J1", 1)]));
});
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
  expect(await missed()).toEqual([]);
  const id = await unitId();
  expect(await saveUnitRegister({ unitId: id, changes: { sold_on: day("2022-03-01") }, ...told })).toBe(1);
  expect(await missed()).toEqual([{ job: "J1" }]);
  expect((await readOnly((db) => loadUnit(db, id)))?.inServiceOn).toBe("2022-03-01");
  expect(await saveUnitRegister({ unitId: id, changes: { sold_on: day("2022-03-01") }, ...told })).toBe(0);
  expect(await saveUnitRegister({ unitId: id, changes: { sold_on: null }, ...told })).toBe(1);
  expect(await missed()).toEqual([]);
  const { edits } = await readOnly((db) => loadUnitFacts(db, id));
  expect(edits.map(({ columnName, valueBefore, value, by }) => [columnName, valueBefore, value, by])).toEqual([
    ["sold_on", "2022-03-01", null, "Robin"],
    ["sold_on", null, "2022-03-01", "Robin"],
  ]);
});

test("a file that says otherwise passes the field by and says so", async () => {
  const id = await unitId();
  await saveUnitRegister({ unitId: id, changes: { sold_on: day("2022-03-01"), owner_number: 2 }, ...told });
  await files.load(csv([unit("A1", { sold_on: "2022-04-01", installed_on: "", territory: "US-OH" })]));
  const found = await readOnly((db) => loadUnit(db, id));
  expect(found?.unit).toMatchObject({ soldOn: "2022-03-01", territory: "US-OH", ownerNumber: 2 });
});

test("other facts of the unit are judged anew too", async () => {
  const id = await unitId();
  await saveUnitRegister({ unitId: id, changes: { sold_on: day("2022-03-01") }, ...told });
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
  await files.load(csv([unit("A1", { made: "2022-02-15", sold_on: "", installed_on: "" })]));
  const id = await unitId();
  const changes = { registered_on: day("2022-03-05"), sold_on: day("2022-01-01") };
  await expect(saveUnitRegister({ unitId: id, changes, ...told })).rejects.toThrow();
  expect((await readOnly((db) => loadUnit(db, id)))?.unit.registeredOn).toBeUndefined();
  await expect(saveUnitRegister({ unitId: id, changes, by: " ", reason: "x" })).rejects.toThrow(RangeError);
});
