import { expect, test } from "vitest";
import { orderedMedian } from "@/lib/statistics/intervals/ordered-median";
import { seeded } from "../calendar/seeded";

const ranks = (n: number) => Array.from({ length: n }, (_, index) => ({ value: index + 1, count: 1 }));

// Printed ranks of the 95 % limits of a median: Conover (1999), table A3 used as in section 3.2; from memory, and by hand for
// n = 6 (P(X < 1) = 1/64 = 0.0156) and n = 10 (P(X < 2) = 11/1024 = 0.0107, P(X < 3) = 56/1024 = 0.0547).
test.each([
  [6, 1, 6],
  [9, 2, 8],
  [10, 2, 9],
  [20, 6, 15],
])("of %i values the limits are those of rank %i and %i", (n, low, high) => {
  expect(orderedMedian(ranks(n), 0.95)).toMatchObject({ kind: "median", low, high, median: (n + 1) / 2 });
});

test("five values are too few for 95 %, none are too few for anything", () => {
  expect(orderedMedian(ranks(5), 0.95)).toEqual({ kind: "too few", n: 5 });
  expect(orderedMedian([], 0.5)).toEqual({ kind: "too few", n: 0 });
});

test("values that were seen several times count as often, in any order", () => {
  const many = [
    { value: 9000, count: 3 },
    { value: 6500, count: 40 },
    { value: 7000, count: 0 },
  ];
  expect(orderedMedian(many, 0.95)).toEqual({ kind: "median", n: 43, median: 6500, low: 6500, high: 6500 });
});

// By definition: the limits hold the true median at least as often as they say. Uniform values have it at 50,000.
test("limits of 15 values hold the true median in at least 95 of 100 draws", () => {
  const random = seeded(15);
  let held = 0;
  for (let draw = 0; draw < 4000; draw++) {
    const found = orderedMedian(
      Array.from({ length: 15 }, () => ({ value: random(100_001), count: 1 })),
      0.95,
    );
    if (found.kind === "median" && found.low <= 50_000 && 50_000 <= found.high) held++;
  }
  expect(held / 4000).toBeGreaterThan(0.95); // exactly 0.9648 is expected of ranks 4 and 12
  expect(held / 4000).toBeLessThan(0.98);
});

test("a count that is not whole and a level outside its range are the caller's mistakes", () => {
  expect(() => orderedMedian([{ value: 1, count: 1.5 }], 0.95)).toThrow(RangeError);
  expect(() => orderedMedian(ranks(9), 1)).toThrow(RangeError);
});
