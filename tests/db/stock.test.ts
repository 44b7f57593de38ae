import { randomUUID } from "node:crypto";
import { readdirSync, readFileSync } from "node:fs";
import { sql } from "drizzle-orm";
import { afterAll, beforeEach, expect, test } from "vitest";
import { readOnly } from "@/db/client";
import { closeDatabase } from "@/db/close-database";
import { changeOrder, type OrderRequest } from "@/db/writes/parts/change-order";
import { keepPartTerms } from "@/db/writes/parts/keep-part-terms";
import { recordMovement, type StockEntry } from "@/db/writes/parts/record-movement";
import { workOutOutlooks } from "@/db/writes/parts/settle-outlooks";
import { takeBack } from "@/db/writes/take-back";
import { type Day, day } from "@/lib/calendar/day";
import { assumedTerms } from "@/lib/stock/buying-terms";
import type { OrderAct } from "@/lib/stock/order-act";
import { minimalStandard } from "../minimal-standard";
import { batchOf, csv, fileFolder, job, partLine, shopDocument, startAfresh, unit } from "./intake-files";

const files = fileFolder();
const today = day("2024-03-20");

beforeEach(async () => {
  await startAfresh();
  await files.load(JSON.stringify(shopDocument));
  await files.load(csv([unit("A1")]));
});
afterAll(async () => {
  files.remove();
  await closeDatabase();
});

const at = "2024-03-20T10:00:00Z";
const enter = (entry: StockEntry, { on = "2024-03-01", key = randomUUID() }: { on?: string; key?: string } = {}) =>
  recordMovement({ partNumber: "P-100", entry, happenedOn: on as Day, note: "", by: "test", at, key });
const order = (act: OrderAct, more: Partial<OrderRequest> = {}) =>
  changeOrder({ orderId: undefined, seenVersion: 0, today, by: "test", at, key: randomUUID(), ...more }, act);

/** Sums by separate code: row by row in this test, not by the database. */
async function added(): Promise<Record<string, [number, number]>> {
  const rows = await readOnly((db) =>
    db.rows<{ place: string; quantity: number; reserved: number }>(
      sql`select place, quantity, reserved from stock_movements`,
    ),
  );
  const sums: Record<string, [number, number]> = {};
  for (const { place, quantity, reserved } of rows) {
    const [onHand, aside] = sums[place] ?? [0, 0];
    sums[place] = [onHand + quantity, aside + reserved];
  }
  return sums;
}

async function levels(): Promise<Record<string, [number, number]>> {
  const rows = await readOnly((db) =>
    db.rows<{ place: string; on_hand: number; reserved: number }>(
      sql`select place, on_hand, reserved from stock_levels`,
    ),
  );
  return Object.fromEntries(rows.map((row) => [row.place, [row.on_hand, row.reserved]]));
}

const draftOf = {
  partNumber: "P-100",
  description: "Pump",
  supplier: "",
  quantity: 5,
  unitCostCents: 100,
  note: "",
  why: "",
};

test("movements sum to stock, whatever is entered in whatever order", async () => {
  const random = minimalStandard(20261125);
  const below = (most: number) => Math.floor(random() * most);
  const kinds = ["count", "receipt", "return", "scrap", "reserve", "release", "move"] as const;
  for (let i = 0; i < 25; i++) {
    const kind = kinds[below(kinds.length)] ?? "count";
    const place = below(2) === 0 ? "" : "Ada";
    const pieces = 1 + below(4);
    const entry: StockEntry =
      kind === "count"
        ? { kind, place, counted: below(6) }
        : kind === "move"
          ? { kind, place, to: place === "" ? "Ada" : "", pieces }
          : kind === "reserve" || kind === "release"
            ? { kind, place, pieces, jobNumber: "J" }
            : { kind, place, pieces };
    await enter(entry);
  }
  const sums = await added();
  expect(await levels()).toEqual(sums);
  for (const [onHand, aside] of Object.values(sums)) {
    expect(onHand).toBeGreaterThanOrEqual(0);
    expect(aside).toBeGreaterThanOrEqual(0);
  }
});

test("one form sent five times at once is one movement", async () => {
  const key = randomUUID();
  const answers = await Promise.all(
    Array.from({ length: 5 }, () => enter({ kind: "receipt", place: "", pieces: 3 }, { key })),
  );
  expect(answers.filter(({ kind }) => kind === "done").length).toBeGreaterThan(0);
  await enter({ kind: "receipt", place: "", pieces: 3 }, { key });
  expect(await added()).toEqual({ "": [3, 0] });
  expect(await enter({ kind: "receipt", place: "", pieces: 4 }, { key })).toMatchObject({ kind: "refused" });
});

test("two people cannot scrap the same last piece", async () => {
  await enter({ kind: "count", place: "", counted: 1 });
  const answers = await Promise.all([1, 2, 3].map(() => enter({ kind: "scrap", place: "", pieces: 1 })));
  expect(answers.map(({ kind }) => kind).toSorted()).toEqual(["done", "refused", "refused"]);
  expect(await levels()).toEqual({ "": [0, 0] });
  const said = answers.find(({ kind }) => kind === "refused");
  expect(said?.sentence).toBe("The ledger has 0 on the shelf, so 1 cannot be scrapped. Count what lies there first.");
});

test("no code changes or deletes a movement", () => {
  const sources = readdirSync("db", { recursive: true, encoding: "utf8" }).filter((file) => file.endsWith(".ts"));
  const sinners = sources.filter((file) =>
    /(update|delete from|delete\(|update\()\s*(stock_movements|stockMovements|part_order_events|partOrderEvents)/.test(
      readFileSync(`db/${file}`, "utf8"),
    ),
  );
  expect(sinners).toEqual([]);
});

test("an order comes in two deliveries, which are two receipts, and its days become a lead time", async () => {
  await order({ what: "added", ...draftOf });
  const [{ id } = { id: 0 }] = await readOnly((db) =>
    db.rows<{ id: number }>(sql`select order_id as id from part_orders`),
  );
  const step = (seenVersion: number, act: OrderAct) => order(act, { orderId: id, seenVersion });
  const receipt = (pieces: number) => ({ what: "received", receivedOn: day("2024-03-12"), pieces, place: "" }) as const;
  expect(await step(1, receipt(2))).toMatchObject({
    sentence: "Only what was ordered can come: mark the line as ordered first.",
  });
  await step(1, { what: "ordered", orderedOn: day("2024-03-08"), expectedOn: undefined });
  expect(await step(1, receipt(2))).toMatchObject({ kind: "refused" }); // an older version
  expect(await step(2, receipt(2))).toMatchObject({ sentence: "2 of P-100 came in; 3 are still to come." });
  expect(await step(3, receipt(4))).toMatchObject({ kind: "refused", field: "pieces" });
  expect(await step(3, receipt(3))).toMatchObject({ sentence: "3 of P-100 came in; the line is complete." });
  expect(await levels()).toEqual({ "": [5, 0] });
  const [row] = await readOnly((db) =>
    db.rows(
      sql`select state, received, (select sum(quantity)::int from stock_movements where order_id = ${id}) as receipts, closed_on - ordered_on as days from part_orders`,
    ),
  );
  expect(row).toEqual({ state: "received", received: 5, receipts: 5, days: 4 });
});

test("a closed job takes from its technician's truck or the shelf, once, and taking it back puts it back", async () => {
  await enter({ kind: "count", place: "", counted: 4 });
  await enter({ kind: "count", place: "Ada", counted: 2 });
  const jobs = [
    job("J0", "A1", { requested_on: "2024-02-20", completed_on: "2024-02-28", technician: "Ada" }),
    job("J1", "A1", { requested_on: "2024-03-04", completed_on: "2024-03-05", technician: "Ada" }),
    job("J2", "A1", { requested_on: "2024-03-06", completed_on: "2024-03-07", technician: "Bo" }),
  ];
  await files.load(csv(jobs));
  const lines = await files.load(csv([partLine("J0", 1), partLine("J1", 1), partLine("J2", 1, { quantity: 3 })]));
  await workOutOutlooks(today);
  expect(await levels()).toEqual({ "": [1, 0], Ada: [1, 0] }); // J0 came before the count
  await workOutOutlooks(today);
  expect(await levels()).toEqual({ "": [1, 0], Ada: [1, 0] });
  await files.load(csv([partLine("J2", 1, { quantity: 5 })]));
  expect(await levels()).toEqual({ "": [-1, 0], Ada: [1, 0] }); // the ledger says so: somebody must count
  await takeBack(batchOf(lines)); // J2's line stays: a later file has changed it
  expect(await levels()).toEqual({ "": [-1, 0], Ada: [2, 0] });
  expect(await levels()).toEqual(await added());
});

test("a supersession that would lead in a circle is refused with the circle", async () => {
  const say = (partNumber: string, supersededBy: string) =>
    keepPartTerms({
      partNumber,
      seenVersion: 0,
      terms: {
        ...assumedTerms,
        criticality: "usual",
        supplier: "",
        unitCostCents: undefined,
        supersededBy,
        lastBuyOn: undefined,
      },
      today,
      by: "test",
      at,
      key: randomUUID(),
    });
  expect(await say("P-1", "P-2")).toMatchObject({ kind: "done" });
  expect(await say("P-2", "P-3")).toMatchObject({ kind: "done" });
  const third = await say("P-3", "p1");
  expect(third).toMatchObject({ kind: "refused", field: "supersededBy" });
  expect(third.sentence).toMatch(/P-1 → P-2 → P-3 → P-1|P-2 → P-3 → P-1 → P-2|P-3 → P-1 → P-2 → P-3/);
});
