import { describe, expect, test } from "vitest";
import { productionScan } from "@/lib/signals/production-scan";

const even = (failures: readonly number[]) => failures.map((count) => ({ failures: count, expected: 1 }));

// Case D04 (recomputed exactly and by simulation by those who gathered it): the chance that the busiest of 12 equal cells
// holds at least k of N. A scan with runs of one week over equal weeks orders arrangements by that maximum.
test.each([
  { total: 20, most: 6, chance: 0.0556 },
  { total: 20, most: 5, chance: 0.2473 },
  { total: 8, most: 4, chance: 0.03077 },
])("D04: busiest of 12 with $most of $total", ({ total, most, chance }) => {
  const others = total - most;
  const failures = Array.from({ length: 12 }, (_, i) => (i === 0 ? most : Math.floor((others + i - 1) / 11)));
  const scan = productionScan({ weeks: even(failures), longest: 1, draws: 9999, seed: 5 });
  expect(scan.kind).toBe("run");
  if (scan.kind !== "run") return;
  expect(scan).toMatchObject({ first: 0, last: 0, failures: most, total });
  // Standard error of 9,999 draws at these chances is at most 0.0043.
  expect(Math.abs(scan.chance - chance)).toBeLessThan(0.013);
});

test("a fortnight that is crowded among quiet weeks is found with its share", () => {
  const scan = productionScan({ weeks: even([0, 1, 0, 0, 6, 7, 0, 1, 0, 0, 1, 0]), longest: 6, draws: 199, seed: 1 });
  expect(scan).toMatchObject({ kind: "run", first: 4, last: 5, failures: 13, total: 16 });
  expect(scan.kind === "run" && scan.share).toBeCloseTo(2 / 12, 9);
  expect(scan.kind === "run" && scan.chance).toBe(1 / 200);
});

test("weeks of which much is expected need more failures to stand out", () => {
  const weeks = [10, 1, 1, 1, 1].map((expected, i) => ({ expected, failures: i === 0 ? 8 : 2 }));
  const scan = productionScan({ weeks, longest: 3, draws: 199, seed: 1 });
  expect(scan.kind === "run" && scan.chance).toBeGreaterThan(0.3);
});

// By simulation: arrangements drawn by chance give a chance at or under 0.1 in a tenth of cases. 200 of them: limits 4 and 36
// are beyond four standard deviations.
test("where nothing is wrong small chances are as rare as they say", () => {
  let small = 0;
  for (let seed = 1; seed <= 200; seed++) {
    const weeks = new Array<number>(30).fill(0);
    let state = seed * 2_654_435_761;
    for (let i = 0; i < 15; i++) {
      state = (Math.imul(state, 1_664_525) + 1_013_904_223) >>> 0;
      const at = Math.floor((state / 2 ** 32) * 30);
      weeks[at] = (weeks[at] ?? 0) + 1;
    }
    const scan = productionScan({ weeks: even(weeks), longest: 8, draws: 39, seed });
    if (scan.kind === "run" && scan.chance <= 0.1) small += 1;
  }
  expect(small).toBeGreaterThanOrEqual(4);
  expect(small).toBeLessThanOrEqual(36);
});

describe("what cannot be scanned", () => {
  test("too few failures, or one week only", () => {
    expect(productionScan({ weeks: even([1, 1, 0]), longest: 2, draws: 19, seed: 1 })).toEqual({
      kind: "too-few",
      failures: 2,
    });
    expect(productionScan({ weeks: even([9]), longest: 2, draws: 19, seed: 1 })).toEqual({
      kind: "too-few",
      failures: 9,
    });
  });
  test("a caller's mistake names its place", () => {
    expect(() => productionScan({ weeks: [{ failures: 0.5, expected: 1 }], longest: 1, draws: 19, seed: 1 })).toThrow(
      "weeks[0].failures",
    );
  });
});
