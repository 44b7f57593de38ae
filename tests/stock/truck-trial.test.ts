import { expect, test } from "vitest";
import { type TruckTrialQuestion, truckTrial } from "@/lib/stock/truck-trial";

const visit = (...parts: readonly string[]) => ({ parts: new Map(parts.map((part) => [part, 1])), trend: 1 });
const asked: TruckTrialQuestion = {
  visits: [
    ...Array.from({ length: 60 }, () => visit("pump")),
    ...Array.from({ length: 40 }, () => visit("pump", "board")),
  ],
  overDays: 365,
  fillingDays: 7,
  before: new Map(),
  after: new Map([
    ["pump", 99],
    ["board", 99],
  ]),
  futures: 300,
  seed: 5,
};

test("an empty truck does nothing at once, a full one everything", () => {
  expect(truckTrial(asked)).toEqual({
    before: { mean: 0, low: 0, high: 0 },
    after: { mean: 1, low: 1, high: 1 },
    gain: { mean: 1, low: 1, high: 1 },
  });
  expect(truckTrial({ ...asked, visits: [] })).toBeUndefined();
  expect(() => truckTrial({ ...asked, fillingDays: 0 })).toThrow(/fillingDays/);
});

// By hand: with pumps alone the share is that of the visits that need no board, 60 of 100. One year tells it with the
// error of 60 of 100, √(0.6 · 0.4 / 100), and the next year's 100 visits add as much by chance: 0.6 ± 1.645 · 0.069.
test("the range holds what one year leaves open and the chance of the next", () => {
  const found = truckTrial({ ...asked, after: new Map([["pump", 99]]) });
  expect(Math.abs((found?.after.mean ?? 0) - 0.6)).toBeLessThan(0.02);
  expect(Math.abs((found?.after.low ?? 0) - 0.486)).toBeLessThan(0.035);
  expect(Math.abs((found?.after.high ?? 0) - 0.714)).toBeLessThan(0.035);
});

// By definition: visits to one part are Poisson with a mean of 100 / 365 × 28 between fillings; two pieces meet E min(N, 2).
test("pieces run out within a filling, as the fill rate of one part says", () => {
  const mean = (100 * 28) / 365;
  const [none, one] = [Math.exp(-mean), mean * Math.exp(-mean)];
  const met = (one + 2 * (1 - none - one)) / mean;
  const found = truckTrial({
    ...asked,
    visits: Array.from({ length: 100 }, () => visit("pump")),
    fillingDays: 28,
    after: new Map([["pump", 2]]),
  });
  expect(Math.abs((found?.after.mean ?? 0) / met - 1)).toBeLessThan(0.04);
});
