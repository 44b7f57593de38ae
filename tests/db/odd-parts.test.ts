// Records that cannot be right, or say too little: each is named on the part's page, which says all that it still can.
import { randomUUID } from "node:crypto";
import { afterAll, beforeAll, expect, test } from "vitest";
import { type KnownPart, loadPart } from "@/app/parts/[part]/load-part";
import { partFinding, partNotes, reorderWords } from "@/app/parts/[part]/part-words";
import { partRows } from "@/app/parts/parts-view";
import { readOnly } from "@/db/client";
import { closeDatabase } from "@/db/close-database";
import { recordMovement } from "@/db/writes/parts/record-movement";
import { workOutOutlooks } from "@/db/writes/parts/settle-outlooks";
import { type Day, day } from "@/lib/calendar/day";
import { assumedTerms } from "@/lib/stock/buying-terms";
import { partPlan } from "@/lib/stock/part-plan";
import { csv, fileFolder, job, partLine, shopDocument, startAfresh, unit } from "./intake-files";

const files = fileFolder();
/** One whole month of records lies before it. */
const today = day("2024-04-10");

beforeAll(async () => {
  process.env.OHMSWORTH_TODAY = today;
  await startAfresh();
  await files.load(JSON.stringify(shopDocument));
  await files.load(csv([unit("A1"), unit("A2")]));
  const dates = { requested_on: "2024-03-04", completed_on: "2024-03-05" };
  await files.load(csv([job("J1", "A1", dates), job("J2", "A2", { ...dates, component: "door_lock" })]));
  await files.load(
    csv([
      partLine("J1", 1),
      partLine("J1", 2, { part_number: "S-9", component: "drain_pump" }),
      partLine("J2", 1, { part_number: "S-9", component: "door_lock" }),
      partLine("J2", 2, { part_number: "L-1", component: "door_lock" }),
    ]),
  );
  await files.load(
    csv([
      { part_number: "L-1", component: "door_lock", replaces: "L-2", cost: "12.00" },
      { part_number: "L-2", component: "door_lock", replaces: "L-1", cost: "11.00" },
    ]),
  );
  // Counted as none before the job that took one: the ledger goes below nothing.
  await recordMovement({
    partNumber: "P-100",
    entry: { kind: "count", place: "", counted: 0 },
    happenedOn: "2024-03-01" as Day, // a day as the form sends it
    note: "",
    by: "test",
    at: "2024-04-01T10:00:00Z",
    key: randomUUID(),
  });
  await workOutOutlooks(today);
});
afterAll(async () => {
  files.remove();
  await closeDatabase();
});

async function known(number: string): Promise<KnownPart> {
  const view = await readOnly((db) => loadPart(db, number));
  if (view.kind !== "part") throw new Error(`${number}: ${view.kind}`);
  return view;
}

test("fewer than none on the shelf is named with its place, taken as none, and still ordered for", async () => {
  const { part } = await known("P-100");
  expect(part.onHand).toBe(-1);
  expect(partNotes(part).join(" ")).toMatch(/fewer than none at some places \(Shelf -1\).*Count them/);
  const [row] = partRows([part]);
  expect(row?.line.kind).toBe("negative-stock");
  expect(partFinding(part)).toMatch(/most likely .* in April 2024/);
});

test("a history of one month is named, with a range that leans on other parts and no test", async () => {
  const { part } = await known("P-100");
  expect(part.history).toHaveLength(1);
  expect(partNotes(part).join(" ")).toMatch(/Only 1 whole month of use is on record.*With 12 months/);
  expect(part.outlook).toMatchObject({ kind: "forecast", basis: "few-months", test: { kind: "too-short", months: 1 } });
  expect(part.plan.reorder.kind).toBe("reorder-point");
});

test("a part that jobs put to several components has none, and is forecast from its own use", async () => {
  const { part, signals } = await known("S-9");
  expect(part.component).toBeUndefined();
  expect(partNotes(part).join(" ")).toMatch(
    /No component is on file for it, or jobs name several: it is forecast from its own use/,
  );
  expect(part.outlook).toMatchObject({ kind: "forecast", fleet: { kind: "no-component" } });
  expect(signals).toEqual([]);
});

test("numbers that supersede each other in a circle stand for themselves, and the circle is named", async () => {
  const { part } = await known("L-1");
  expect(part.usedLastYear).toBe(1);
  expect(partNotes(part).join(" ")).toMatch(
    /supersede each other in a circle: L-\d → L-\d → L-\d\. Each is forecast from its own use/,
  );
});

// The form refuses 0 days with its own sentence (e2e/parts.spec.ts); what a file or an earlier entry said is still answered.
test("a lead time of zero with no time between looks needs no stock, and says so", () => {
  const paths = Array.from({ length: 10 }, () => [2, 2]);
  const plan = (reviewDays: number) =>
    partPlan({
      paths,
      goneDays: 0,
      terms: { ...assumedTerms, leadDays: [0], reviewDays },
      orderDays: [],
      unitCents: 100,
    });
  expect(reorderWords(plan(0)).join(" ")).toMatch(/comes on the day it is ordered/);
  expect(reorderWords(plan(7)).join(" ")).toMatch(/From one look at the shelf to the next 7 days/);
});
