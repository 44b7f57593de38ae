// Puts stock, trucks and orders of the invented company in place, through the same writes as the pages. How many lie
// where is invented; it refuses a company that is not.
import { randomUUID } from "node:crypto";
import { readOnly } from "@/db/client";
import { closeDatabase } from "@/db/close-database";
import { type ListedPart, loadPartList } from "@/db/queries/part-list";
import { loadShop } from "@/db/queries/shop";
import { loadTechnicians, orderIdOfLast } from "@/db/queries/stock-places";
import { changeOrder } from "@/db/writes/parts/change-order";
import { keepPartTerms } from "@/db/writes/parts/keep-part-terms";
import { recordMovement } from "@/db/writes/parts/record-movement";
import { workOutOutlooks } from "@/db/writes/parts/settle-outlooks";
import { addDays, type Day, day } from "@/lib/calendar/day";
import type { OrderAct } from "@/lib/stock/order-act";
import { stockStories } from "./demo-stock/stories";
import { termsOf } from "./demo-stock/terms-of";

const by = "the shop";

async function main(): Promise<void> {
  const until = day(process.argv[2] ?? "");
  const shop = await readOnly(loadShop);
  if (!shop.demo) throw new RangeError("This company is not an invented one: no stock was entered.");
  await workOutOutlooks(until);
  const parts = await readOnly((db) => loadPartList(db));
  if (parts.some(({ onHand }) => onHand !== undefined)) {
    console.log("Stock is kept already: none was added.");
    return;
  }
  const technicians = await readOnly((db) => loadTechnicians(db, addDays(until, -365)));
  const told = stockStories(parts, technicians);
  for (const story of told) {
    await keepTerms(story.part, until);
    const enter = (entry: Parameters<typeof recordMovement>[0]["entry"], on: Day) =>
      recordMovement({
        partNumber: story.part.partNumber,
        entry,
        happenedOn: on,
        note: "",
        by,
        at: instantOf(on),
        key: randomUUID(),
      });
    const counted = addDays(until, -story.countedDaysAgo);
    const order = ({ daysAgo, ...told }: (typeof story.orders)[number]) =>
      tellOrder(story.part, { ...told, orderedOn: addDays(until, -daysAgo), until });
    const isOld = ({ daysAgo, leadDays }: (typeof story.orders)[number]) => daysAgo - leadDays > story.countedDaysAgo;
    for (const each of story.orders.filter(isOld)) await order(each);
    await enter({ kind: "count", place: "", counted: story.shelf }, counted);
    for (const { technician, pieces } of story.trucks)
      await enter({ kind: "count", place: technician, counted: pieces }, counted);
    for (const each of story.orders.filter((one) => !isOld(one))) await order(each);
  }
  await workOutOutlooks(until);
  console.log(`Stock: ${told.length} parts kept, on the shelf, in trucks and on order.`);
}

async function keepTerms(part: ListedPart, until: Day): Promise<void> {
  const on = addDays(until, -200);
  await keepPartTerms({
    partNumber: part.partNumber,
    seenVersion: 0,
    terms: termsOf(part, until),
    today: until,
    by,
    at: instantOf(on),
    key: randomUUID(),
  });
}

interface ToldOrder {
  readonly orderedOn: Day;
  readonly leadDays: number;
  readonly pieces: number;
  readonly came: number;
  readonly until: Day;
}

async function tellOrder(part: ListedPart, { orderedOn, leadDays, pieces, came, until }: ToldOrder): Promise<void> {
  const act = async (orderId: number | undefined, seenVersion: number, asked: OrderAct, on: Day) =>
    await changeOrder({ orderId, seenVersion, today: until, by, at: instantOf(on), key: randomUUID() }, asked);
  const line = { partNumber: part.partNumber, description: part.description, supplier: termsOf(part, until).supplier };
  await act(
    undefined,
    0,
    { what: "added", ...line, quantity: pieces, unitCostCents: part.unitCostCents, note: "", why: "" },
    orderedOn,
  );
  const id = await readOnly(orderIdOfLast);
  const expectedOn = addDays(orderedOn, leadDays);
  await act(id, 1, { what: "ordered", orderedOn, expectedOn }, orderedOn);
  if (came > 0) {
    const receivedOn = expectedOn < until ? expectedOn : until;
    await act(id, 2, { what: "received", receivedOn, pieces: came, place: "" }, receivedOn);
  }
}

function instantOf(on: Day): string {
  return `${on}T15:00:00Z`;
}

main()
  .then(async () => {
    await closeDatabase();
    process.exit(0);
  })
  .catch((error: unknown) => {
    console.error(error instanceof Error ? error.message : error);
    process.exit(1);
  });
