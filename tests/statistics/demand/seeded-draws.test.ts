import { expect, test } from "vitest";
import { seededDraws } from "@/lib/statistics/demand/seeded-draws";
import { binomialAtMost } from "@/lib/statistics/discrete/binomial";
import { poissonAtMost } from "@/lib/statistics/discrete/poisson";

const times = 20_000;

/** Largest gap between drawn and true share at or below any count; 0.0136 would be passed once in a thousand runs. */
function largestGap(draw: () => number, atMost: (count: number) => number): number {
  const counts = new Map<number, number>();
  for (let i = 0; i < times; i++) {
    const count = draw();
    counts.set(count, (counts.get(count) ?? 0) + 1);
  }
  let [seen, gap] = [0, 0];
  for (const count of [...counts.keys()].sort((a, b) => a - b)) {
    seen += counts.get(count) ?? 0;
    gap = Math.max(gap, Math.abs(seen / times - atMost(count)));
  }
  return gap;
}

test.each([0.4, 11, 60])("Poisson draws of mean %d are Poisson", (mean) => {
  const draws = seededDraws(1);
  expect(
    largestGap(
      () => draws.poisson(mean),
      (count) => poissonAtMost(count, mean),
    ),
  ).toBeLessThan(0.0136);
});

test.each([
  [5, 0.3],
  [400, 0.004],
  [300, 0.4],
  [60, 0.97],
])("binomial draws of %d at %d are binomial", (trials, chance) => {
  const draws = seededDraws(2);
  const gap = largestGap(
    () => draws.binomial(trials, chance),
    (count) => binomialAtMost(count, { trials, chance }),
  );
  expect(gap).toBeLessThan(0.0136);
});

test("one seed gives one sequence, certain and impossible trials are so", () => {
  expect(seededDraws(7).uniform()).toBe(seededDraws(7).uniform());
  expect(seededDraws(7).uniform()).not.toBe(seededDraws(8).uniform());
  expect([seededDraws(3).binomial(9, 1), seededDraws(3).binomial(9, 0), seededDraws(3).binomial(0, 0.5)]).toEqual([
    9, 0, 0,
  ]);
});
