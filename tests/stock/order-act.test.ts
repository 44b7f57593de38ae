import { expect, test } from "vitest";
import { day } from "@/lib/calendar/day";
import { type OrderAct, orderAfter, orderProblem, type StandingOrder } from "@/lib/stock/order-act";

const today = day("2026-03-31");
const draft: StandingOrder = { partNumber: "P-1", state: "draft", quantity: 5, received: 0, orderedOn: undefined };
const ordered: StandingOrder = { ...draft, state: "ordered", orderedOn: day("2026-03-10"), received: 2 };
const came = (pieces: number, on = "2026-03-12") =>
  ({ what: "received", receivedOn: day(on), pieces, place: "" }) as const;
const changed = (quantity: number): OrderAct & { what: "changed" } => ({
  what: "changed",
  quantity,
  supplier: "",
  unitCostCents: undefined,
  note: "",
  expectedOn: undefined,
});

test.each([
  [
    "what was not ordered cannot come",
    draft,
    came(1),
    "Only what was ordered can come: mark the line as ordered first.",
  ],
  [
    "nothing comes before it was ordered",
    ordered,
    came(1, "2026-03-09"),
    "It was ordered on 2026-03-10, so it cannot have come before.",
  ],
  [
    "no more comes than was ordered",
    ordered,
    came(4),
    "3 are still to come. Enter what came beyond the order as a receipt of its own, on the part’s page.",
  ],
  ["no fewer can be ordered than came", ordered, changed(1), "2 have come already, so no fewer can be ordered."],
  [
    "a million and one is no order",
    draft,
    changed(1_000_001),
    "1000001 is no number of pieces; enter a whole number from 1 to 1,000,000.",
  ],
])("%s", (_, order, act, sentence) => {
  expect(orderProblem(order, act)?.sentence).toBe(sentence);
});

test("the last delivery closes the line on its day, an earlier one leaves it open", () => {
  expect(orderProblem(ordered, came(3))).toBeUndefined();
  expect(orderAfter(ordered, came(2), today)).toEqual({ received: 4 });
  expect(orderAfter(ordered, came(3), today)).toEqual({ received: 5, state: "received", closedOn: "2026-03-12" });
});

test("a quantity lowered to what came closes the line today", () => {
  expect(orderAfter(ordered, changed(2), today)).toMatchObject({ quantity: 2, state: "received", closedOn: today });
  expect(orderAfter(ordered, changed(3), today)).not.toHaveProperty("state");
});
