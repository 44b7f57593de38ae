import { expect, test } from "vitest";
import { type OrderCosts, orderQuantity } from "@/lib/stock/order-quantity";
import { suggestOrder } from "@/lib/stock/suggest-order";

const asked: OrderCosts = {
  yearlyDemand: 1000,
  orderCents: 2000,
  unitCents: 1000,
  holdingPerYear: 0.25,
  pack: 1,
  longestMonths: 24,
};

// By hand: √(2 · 2000 · 1000 / 250) = 126.49; 126 and 127 cost 31 623.02 and 31 623.03 cents a year.
test("an order of √(2 · order cost · demand / holding) costs least", () => {
  expect(orderQuantity(asked)).toMatchObject({ kind: "quantity", pieces: 126, setBy: "costs" });
  const { yearlyCents } = orderQuantity(asked) as { readonly yearlyCents: number };
  expect(yearlyCents).toBeCloseTo(2000 * (1000 / 126) + (250 * 126) / 2, 8);
});

// By definition: every multiple of the pack that does not last too long is tried.
test.each([1, 3, 10, 50, 400])("no other number of packs of %i costs less", (pack) => {
  for (const yearlyDemand of [3, 40, 977]) {
    for (const longestMonths of [1, 6, 30]) {
      const best = orderQuantity({ ...asked, yearlyDemand, pack, longestMonths });
      if (best.kind !== "quantity") throw new Error(best.kind);
      const lasts = (packs: number) => packs === 1 || packs * pack <= (yearlyDemand * longestMonths) / 12;
      const tried = Array.from({ length: 300 }, (_, i) => i + 1).filter(lasts);
      const cost = (packs: number) => (2000 * yearlyDemand) / (packs * pack) + (250 * packs * pack) / 2;
      expect(best.yearlyCents).toBeCloseTo(Math.min(...tried.map(cost)), 8);
      expect(lasts(best.packs)).toBe(true);
    }
  }
});

test("what set the quantity is said; shelves that cost nothing are filled for as long as allowed", () => {
  expect(orderQuantity({ ...asked, holdingPerYear: 0, longestMonths: 6 })).toMatchObject({
    pieces: 500,
    setBy: "longest-months",
  });
  expect(orderQuantity({ ...asked, yearlyDemand: 1, pack: 12 })).toMatchObject({ pieces: 12, setBy: "one-pack" });
  expect(orderQuantity({ ...asked, yearlyDemand: 0 })).toEqual({ kind: "no-demand" });
  expect(() => orderQuantity({ ...asked, pack: 0 })).toThrow(/pack/);
});

// By hand.
test("at the reorder point a usual order is placed, far below it as many packs as lift the stock above it", () => {
  const rule = { reorderPoint: 5, quantity: 6, pack: 4 };
  expect(suggestOrder({ onHand: 6, onOrder: 0, reserved: 0 }, rule)).toEqual({ kind: "enough", available: 6 });
  expect(suggestOrder({ onHand: 6, onOrder: 0, reserved: 1 }, rule)).toMatchObject({ pieces: 8, packs: 2 });
  expect(suggestOrder({ onHand: 1, onOrder: 5, reserved: 0 }, rule)).toMatchObject({ kind: "enough" });
  // Owed 9 and none there: 15 lift it above 5, that is four packs of four.
  expect(suggestOrder({ onHand: 0, onOrder: 0, reserved: 9 }, rule)).toMatchObject({ pieces: 16, available: -9 });
  expect(suggestOrder({ onHand: -2, onOrder: 0, reserved: 0 }, rule)).toEqual({
    kind: "negative-stock",
    onHand: -2,
    pieces: 8,
    packs: 2,
  });
  expect(() => suggestOrder({ onHand: 1.5, onOrder: 0, reserved: 0 }, rule)).toThrow(/onHand/);
});
