import { expect, test } from "vitest";
import { partLine } from "@/lib/stock/part-line";
import type { StoredPlan } from "@/lib/stock/stored-plan";

const plan: StoredPlan = {
  lead: { kind: "stated", mean: 5, longest: 5 },
  reviewDays: 7,
  shortOneIn: 10,
  pack: 4,
  reorder: {
    kind: "reorder-point",
    level: 3,
    service: 0.92,
    expected: 1.4,
    low60: 0,
    high60: 2,
    low90: 0,
    high90: 4,
    atMost: [0.25, 0.6, 0.8, 0.92, 0.98, 1],
    twenty: [],
  },
  order: { kind: "quantity", pieces: 8, yearlyDemand: 40, yearlyCents: 100, setBy: "costs" },
  twoYears: { chanceOfNone: 0, expected: 80, enough: 95 },
};
const stock = { onHand: 0, onOrder: 0, reserved: 0 };

// By hand from the chances above.
test.each([
  ["at the reorder point", { onHand: 3 }, { kind: "order", pieces: 8, available: 3, chanceShort: 0.08 }],
  ["one above it", { onHand: 4 }, { kind: "enough", available: 4, chanceShort: 0.02 }],
  ["above it by what is on order", { onHand: 1, onOrder: 3 }, { kind: "enough", available: 4, chanceShort: 0.02 }],
  [
    "below it by what is put aside",
    { onHand: 5, reserved: 2 },
    { kind: "order", pieces: 8, available: 3, chanceShort: 0.08 },
  ],
  ["with fewer than none", { onHand: -2 }, { kind: "negative-stock", pieces: 8, available: 0, chanceShort: 0.75 }],
  [
    "with more put aside than there is",
    { onHand: 1, reserved: 3 },
    { kind: "order", pieces: 8, available: -2, chanceShort: 1 },
  ],
])("a part %s", (_, given, expected) => {
  const { chanceShort, ...line } = expected;
  const found = partLine(plan, { ...stock, ...given });
  expect(found).toMatchObject(line);
  expect("chanceShort" in found ? found.chanceShort : undefined).toBeCloseTo(chanceShort, 12);
});

test("where nobody counted nothing is suggested, and where no need is known it says why", () => {
  expect(partLine(plan, { ...stock, onHand: undefined })).toEqual({ kind: "not-counted" });
  const dark: StoredPlan = { ...plan, reorder: { kind: "no-forecast" } };
  expect(partLine(dark, { ...stock, onHand: 3 })).toEqual({ kind: "no-need-known", why: "no-forecast" });
});

test("a part that is hardly asked for is not bought for an empty shelf", () => {
  const rare: StoredPlan = {
    ...plan,
    reorder: {
      kind: "reorder-point",
      level: 0,
      service: 0.99,
      expected: 0.01,
      low60: 0,
      high60: 0,
      low90: 0,
      high90: 0,
      atMost: [0.99, 1],
      twenty: [],
    },
  };
  expect(partLine(rare, stock)).toMatchObject({ kind: "enough", available: 0 });
  expect(partLine(rare, { ...stock, reserved: 1 })).toMatchObject({ kind: "order" });
});
