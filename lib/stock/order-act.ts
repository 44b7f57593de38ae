import type { Day } from "@/lib/calendar/day";
import type { OrderState } from "@/lib/domain/stock";

/** What is asked of the order list. */
export type OrderAct =
  | ({ readonly what: "added" } & OrderLine)
  | ({ readonly what: "changed"; readonly expectedOn: Day | undefined } & Omit<
      OrderLine,
      "partNumber" | "description" | "why"
    >)
  | { readonly what: "ordered"; readonly orderedOn: Day; readonly expectedOn: Day | undefined }
  /** To the shelf, or to a technician's truck. */
  | { readonly what: "received"; readonly receivedOn: Day; readonly pieces: number; readonly place: string }
  | { readonly what: "cancelled" | "reopened"; readonly on: Day };

interface OrderLine {
  readonly partNumber: string;
  readonly description: string;
  readonly supplier: string;
  readonly quantity: number;
  readonly unitCostCents: number | undefined;
  readonly note: string;
  /** The arithmetic behind the quantity. */
  readonly why: string;
}

/** An order line as it stands. */
export interface StandingOrder {
  readonly partNumber: string;
  readonly state: OrderState;
  readonly quantity: number;
  readonly received: number;
  readonly orderedOn: Day | undefined;
}

/** Why something cannot be done, and what to do. */
export interface OrderProblem {
  readonly field?: string | undefined;
  readonly sentence: string;
}

type LaterAct = Exclude<OrderAct, { what: "added" }>;

/** Why the act does not fit the line as it stands; undefined where it does. */
export function orderProblem(row: StandingOrder, act: LaterAct): OrderProblem | undefined {
  switch (act.what) {
    case "changed":
      if (row.state === "received" || row.state === "cancelled")
        return refused(`This line is ${row.state}; it can no longer be changed.`);
      if (act.quantity < row.received)
        return refused(`${row.received} have come already, so no fewer can be ordered.`, "quantity");
      if (act.expectedOn !== undefined && row.orderedOn !== undefined && act.expectedOn < row.orderedOn)
        return refused(`It was ordered on ${row.orderedOn}, so it cannot be expected before.`, "expectedOn");
      return quantityProblem(act.quantity);
    case "ordered":
      if (row.state !== "draft") return refused(`This line is ${row.state} already.`);
      if (act.expectedOn !== undefined && act.expectedOn < act.orderedOn)
        return refused(`It is ordered on ${act.orderedOn}, so it cannot be expected before.`, "expectedOn");
      return undefined;
    case "received":
      if (row.state !== "ordered" || row.orderedOn === undefined)
        return refused("Only what was ordered can come: mark the line as ordered first.");
      if (act.receivedOn < row.orderedOn)
        return refused(`It was ordered on ${row.orderedOn}, so it cannot have come before.`, "on");
      if (!Number.isSafeInteger(act.pieces) || act.pieces < 1)
        return refused("Enter how many came: a whole number from 1.", "pieces");
      if (row.received + act.pieces > row.quantity)
        return refused(
          `${row.quantity - row.received} are still to come. Enter what came beyond the order as a receipt of its own, on the part’s page.`,
          "pieces",
        );
      return undefined;
    case "cancelled":
      return row.state === "draft" || row.state === "ordered"
        ? undefined
        : refused(`This line is ${row.state} already.`);
    case "reopened":
      return row.state === "cancelled" ? undefined : refused("Only a cancelled line can be taken up again.");
  }
}

/** What the act makes of the line: the fields that change. @param today closes a line that a smaller quantity completes */
export function orderAfter(row: StandingOrder, act: LaterAct, today: Day) {
  switch (act.what) {
    case "changed": {
      const { what: _, expectedOn, unitCostCents, ...line } = act;
      const isAll = row.state === "ordered" && row.received === act.quantity;
      return {
        ...line,
        expectedOn: row.state === "ordered" ? (expectedOn ?? null) : null,
        unitCostCents: unitCostCents ?? null,
        ...(isAll ? { state: "received" as const, closedOn: today } : {}),
      };
    }
    case "ordered":
      return { state: "ordered" as const, orderedOn: act.orderedOn, expectedOn: act.expectedOn ?? null };
    case "received": {
      const received = row.received + act.pieces;
      return received === row.quantity
        ? { received, state: "received" as const, closedOn: act.receivedOn }
        : { received };
    }
    case "cancelled":
      return { state: "cancelled" as const, closedOn: act.on };
    case "reopened":
      return { state: row.orderedOn === undefined ? ("draft" as const) : ("ordered" as const), closedOn: null };
  }
}

/** What was done, in a sentence. */
export function describeOrderAct({ partNumber, quantity, received }: StandingOrder, act: LaterAct): string {
  switch (act.what) {
    case "changed":
      return `${partNumber} is changed.`;
    case "ordered":
      return `${partNumber} is marked as ordered.`;
    case "received": {
      const left = quantity - received - act.pieces;
      return `${act.pieces} of ${partNumber} came in${left > 0 ? `; ${left} are still to come` : "; the line is complete"}.`;
    }
    case "cancelled":
      return `${partNumber} is cancelled. It can be taken up again.`;
    case "reopened":
      return `${partNumber} stands on the list again.`;
  }
}

/** Why so many cannot be ordered. */
export function quantityProblem(quantity: number): OrderProblem | undefined {
  if (Number.isSafeInteger(quantity) && quantity >= 1 && quantity <= 1_000_000) return undefined;
  return refused(`${quantity} is no number of pieces; enter a whole number from 1 to 1,000,000.`, "quantity");
}

function refused(sentence: string, field?: string): OrderProblem {
  return { field, sentence };
}
