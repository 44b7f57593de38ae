import { sql } from "drizzle-orm";
import type { Day } from "@/lib/calendar/day";
import type { Currency } from "@/lib/domain/money";
import { normalised } from "@/lib/domain/normalised";
import type { OrderState } from "@/lib/domain/stock";
import { describeOrderAct, type OrderAct, orderAfter, orderProblem, quantityProblem } from "@/lib/stock/order-act";
import type { Transaction } from "../../database-types";
import { partOrderEvents, partOrders } from "../../schema/stock";
import { appendMovements, type Entered, lockStock } from "./append-movements";
import { onceInStock, type StockAnswer } from "./once-in-stock";
import { replanParts } from "./replan-parts";

export interface OrderRequest extends Entered {
  /** Undefined for a new line. */
  readonly orderId: number | undefined;
  readonly seenVersion: number;
  readonly today: Day;
}

/** Does one thing to the order list, once however often it is asked, and never over a version that was not seen. */
export async function changeOrder(request: OrderRequest, act: OrderAct): Promise<StockAnswer> {
  const asked = [request.orderId ?? null, request.seenVersion, act];
  return await onceInStock("orders", request, asked, (tx) =>
    act.what === "added" ? add(tx, request, act) : change(tx, request, act),
  );
}

async function add(
  tx: Transaction,
  request: OrderRequest,
  act: Extract<OrderAct, { what: "added" }>,
): Promise<StockAnswer> {
  const partKey = normalised(act.partNumber);
  if (partKey === "") return refused("A part number needs a letter or a digit.", "part");
  const wrong = quantityProblem(act.quantity);
  if (wrong !== undefined) return { kind: "refused", ...wrong };
  const [shop] = await tx.rows<{ currency: Currency }>(sql`select currency from shop`);
  if (shop === undefined) return refused("There is no company yet: load its settings first.");
  const { what: _, unitCostCents, ...line } = act;
  const [stored] = await tx
    .insert(partOrders)
    .values({
      ...line,
      partKey,
      unitCostCents: unitCostCents ?? null,
      currency: shop.currency,
      state: "draft",
      received: 0,
      version: 1,
    })
    .returning({ orderId: partOrders.orderId });
  if (stored === undefined) throw new Error("The order line was stored without a number.");
  await note(tx, stored.orderId, 1, request, act);
  return { kind: "done", sentence: `${act.quantity} of ${act.partNumber} stand on the order list as a draft.` };
}

async function change(
  tx: Transaction,
  request: OrderRequest,
  act: Exclude<OrderAct, { what: "added" }>,
): Promise<StockAnswer> {
  const { orderId = 0, seenVersion } = request;
  const [found] = await tx.rows<OrderRow>(sql`
    select part_key as "partKey", part_number as "partNumber", state, quantity, received, ordered_on::text as "orderedOn", version
    from part_orders where order_id = ${orderId} for update`);
  const row = found && { ...found, orderedOn: found.orderedOn ?? undefined };
  if (row === undefined) return refused("This line is no longer on the order list.");
  if (row.version !== seenVersion)
    return refused("Somebody changed this line meanwhile. Look at it as it is now, then enter yours again.");
  const problem = orderProblem(row, act);
  if (problem !== undefined) return { kind: "refused", ...problem };
  const next = orderAfter(row, act, request.today);
  await tx
    .update(partOrders)
    .set({ ...next, version: row.version + 1 })
    .where(sql`order_id = ${orderId}`);
  await note(tx, orderId, row.version + 1, request, act);
  if (act.what === "received") await receive(tx, request, row, act);
  if (next.state === "received") await replanParts(tx, [row.partKey], request.today);
  return { kind: "done", sentence: describeOrderAct(row, act) };
}

async function receive(
  tx: Transaction,
  request: OrderRequest,
  row: { readonly partKey: string; readonly partNumber: string },
  { pieces, place, receivedOn }: Extract<OrderAct, { what: "received" }>,
): Promise<void> {
  const { partKey, partNumber } = row;
  await lockStock(tx, [partKey]);
  await appendMovements(
    tx,
    [
      {
        partKey,
        partNumber,
        place,
        kind: "receipt",
        quantity: pieces,
        reserved: 0,
        happenedOn: receivedOn,
        note: "",
        orderId: request.orderId,
      },
    ],
    request,
  );
}

async function note(
  tx: Transaction,
  orderId: number,
  version: number,
  { by, at }: Entered,
  act: OrderAct,
): Promise<void> {
  const { what, ...detail } = act;
  await tx.insert(partOrderEvents).values({ orderId, version, at, by, what, detail });
}

interface OrderRow extends Record<string, unknown> {
  readonly partKey: string;
  readonly partNumber: string;
  readonly state: OrderState;
  readonly quantity: number;
  readonly received: number;
  readonly orderedOn: Day | null;
  readonly version: number;
}

function refused(sentence: string, field?: string): StockAnswer {
  return { kind: "refused", field, sentence };
}
