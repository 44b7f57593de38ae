// Puts stock, trucks and orders of the invented company in place, through the same writes as the pages. How many lie
// where is invented; it refuses a company that is not.
import { randomUUID } from "node:crypto";
import { readOnly } from "@/db/client";
import { type ListedPart, loadPartList } from "@/db/queries/part-list";
import { loadShop } from "@/db/queries/shop";
import { loadTechnicians, orderIdOfLast } from "@/db/queries/stock-places";
import { changeOrder } from "@/db/writes/parts/change-order";
import { keepPartTerms } from "@/db/writes/parts/keep-part-terms";
import { recordMovement } from "@/db/writes/parts/record-movement";
import { workOutOutlooks } from "@/db/writes/parts/settle-outlooks";
import { addDays, type Day, day } from "@/lib/calendar/day";
import type { OrderAct } from "@/lib/stock/order-act";
import { type StockStory, stockStories } from "./demo-stock/stories";
import { termsOf } from "./demo-stock/terms-of";
import { runCommand } from "./run-command";

const by = "the shop";

async function main(): Promise<number> {
  const until = day(process.argv[2] ?? "");
  const shop = await readOnly(loadShop);
  if (!shop.demo) throw new RangeError("This company is not an invented one: no stock was entered.");
  await workOutOutlooks(until);
  const parts = await readOnly((db) => loadPartList(db));
  if (parts.some(({ onHand }) => onHand !== undefined)) {
    console.log("Stock is kept already: none was added.");
    return 0;
  }
  const technicians = await readOnly((db) => loadTechnicians(db, addDays(until, -365)));
  const told = stockStories(parts, technicians);
  for (const story of told) await tellStory(story, until);
  await workOutOutlooks(until);
  console.log(`Stock: ${told.length} parts kept, on the shelf, in trucks and on order.`);
  return 0;
}

/** Orders from before the count come first: what was counted holds what they brought. */
async function tellStory(story: StockStory, until: Day): Promise<void> {
  await keepTerms(story.part, until);
  const order = ({ daysAgo, ...told }: StockStory["orders"][number]) =>
    tellOrder(story.part, { ...told, orderedOn: addDays(until, -daysAgo), until });
  const isOld = ({ daysAgo, leadDays }: StockStory["orders"][number]) => daysAgo - leadDays > story.countedDaysAgo;
  for (const each of story.orders.filter(isOld)) await order(each);
  const counts = [{ technician: "", pieces: story.shelf }, ...story.trucks];
  const happenedOn = addDays(until, -story.countedDaysAgo);
  for (const { technician, pieces } of counts)
    await recordMovement({
      partNumber: story.part.partNumber,
      entry: { kind: "count", place: technician, counted: pieces },
      happenedOn,
      note: "",
      by,
      at: instantOf(happenedOn),
      key: randomUUID(),
    });
  for (const each of story.orders.filter((one) => !isOld(one))) await order(each);
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

await runCommand(main);
