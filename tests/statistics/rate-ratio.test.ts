import { expect, test } from "vitest";
import { minimumLikelihoodP } from "@/lib/statistics/intervals/minimum-likelihood";
import { type RateRatio, rateRatio } from "@/lib/statistics/intervals/rate-ratio";
import { expectClose, expectPrinted } from "@/tests/reference/read-reference";
import { namedValues } from "@/tests/reference/read-table";

// Fay (2010), R Journal 2(1), 53-58: printed output, read.
test("P05: rate ratio with the p-value that belongs to its interval", () => {
  const groups = { first: { events: 2, exposure: 17877 }, second: { events: 10, exposure: 20000 }, confidence: 0.95 };
  const central = ratioOf(rateRatio({ ...groups, twoSided: "central" }));
  const minimum = ratioOf(rateRatio({ ...groups, twoSided: "minimum-likelihood" }));
  expectPrinted("P05", {
    ratio: central.point,
    lo: central.low,
    hi: central.high,
    p_central: central.pValue,
    p_minlike: minimum.pValue,
  });
  // Each interval agrees with its own p-value about a ratio of 1; the two would contradict each other if mixed.
  expect(central.high).toBeGreaterThan(1);
  expect(minimum.high).toBeLessThan(1);
});

// Andersen (1977) data, R 4.2.2 poisson.test: recomputed.
test("P07: rate ratio of one town against three", () => {
  const groups = { first: { events: 11, exposure: 800 }, second: { events: 21, exposure: 3011 }, confidence: 0.95 };
  const { point, low, high } = ratioOf(rateRatio({ ...groups, twoSided: "central" }));
  const { pValue } = ratioOf(rateRatio({ ...groups, twoSided: "minimum-likelihood" }));
  expectPrinted("P07", { ratio: point, lo: low, hi: high, p_minlike: pValue });
});

function ratioOf(result: RateRatio) {
  if (result.kind !== "ratio") throw new Error("both groups have events, so there is a ratio");
  return result;
}

// R 4.2.2 poisson.test, tests/reference/distributions.R (its interval is printed to ten digits).
test("rate ratios agree with R for uneven and empty groups", () => {
  const exposures = new Map([
    [2, [17877, 20000]],
    [11, [800, 3011]],
    [0, [3, 5]],
    [40, [10, 9]],
  ]);
  const lows = namedValues("distributions-from-r.csv", "ratio.low");
  const highs = namedValues("distributions-from-r.csv", "ratio.high");
  namedValues("distributions-from-r.csv", "ratio.p").forEach(({ a, b, value }, i) => {
    const [one = 1, two = 1] = exposures.get(a) ?? [];
    const groups = { first: { events: a, exposure: one }, second: { events: b, exposure: two }, confidence: 0.95 };
    const central = ratioOf(rateRatio({ ...groups, twoSided: "central" }));
    expect(central.low).toBeCloseTo(lows[i]?.value ?? -1, 8);
    expect(central.high).toBeCloseTo(highs[i]?.value ?? -1, 8);
    expectClose(ratioOf(rateRatio({ ...groups, twoSided: "minimum-likelihood" })).pValue, value, 1e-9);
  });
});

// By definition: the matching interval holds every ratio whose p-value exceeds 5 %, found here by walking.
test.each([
  [2, 10],
  [7, 7],
  [1, 30],
  [0, 6],
])("the minimum-likelihood interval of %i against %i is what its p-value allows", (a, b) => {
  const groups = { first: { events: a, exposure: 1 }, second: { events: b, exposure: 1 }, confidence: 0.95 };
  const { low, high } = ratioOf(rateRatio({ ...groups, twoSided: "minimum-likelihood" }));
  const p = (ratio: number) => minimumLikelihoodP({ events: a, trials: a + b, chance: ratio / (1 + ratio) });
  const kept = Array.from({ length: 40000 }, (_, i) => 1e-4 * 1.0004 ** i).filter((ratio) => p(ratio) > 0.05);
  if (a > 0) expectClose(low, kept[0] ?? 0, 5e-4);
  else expect(low).toBe(0);
  expectClose(high, kept.at(-1) ?? 0, 5e-4);
});

test("a group without events leaves the ratio open above, two leave nothing", () => {
  const none = { events: 0, exposure: 4 };
  const some = { events: 3, exposure: 4 };
  const open = rateRatio({ first: some, second: none, confidence: 0.95, twoSided: "central" });
  expect(open).toMatchObject({ kind: "no-upper-limit", pValue: expect.closeTo(0.25, 14) }); // 2 × (1/2)³, by hand
  expect(rateRatio({ first: none, second: none, confidence: 0.95, twoSided: "central" })).toEqual({
    kind: "no-events",
  });
  expect(() =>
    rateRatio({ first: some, second: { events: 1, exposure: 0 }, confidence: 0.95, twoSided: "central" }),
  ).toThrow(/second.exposure/);
});
