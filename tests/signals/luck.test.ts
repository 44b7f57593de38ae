import { describe, expect, test } from "vitest";
import { logRatio } from "@/lib/signals/follow-cell";
import { luckInAYear, luckRunLength } from "@/lib/signals/luck";
import { cusumRunLength } from "@/lib/statistics/change/cusum-run-length";
import { seededDraws } from "@/lib/statistics/demand/seeded-draws";

// The run length of a sum of log-likelihood ratios from the chain of Brook & Evans (1972), which is itself held to the
// printed tables of Lucas (1985) in tests/statistics/change.test.ts (case D01): the reference value that belongs to the
// ratio is (ratio - 1) mean / ln ratio, and the threshold is the score over ln ratio.
describe.each([2, 4] as const)("ratio %i", (ratio) => {
  test.each([0.05, 0.2, 1, 2])("reference %f: the formula is within 6 %% of the exact run length", (reference) => {
    const mean = (reference * Math.log(ratio)) / (ratio - 1);
    const steps = Math.round(1 / Math.min(reference, 1));
    const threshold = Math.ceil((8 / Math.log(ratio)) * steps) / steps;
    const exact = cusumRunLength({ mean, reference, threshold, start: 0, side: "upper", signalAt: "reach" });
    const score = threshold * Math.log(ratio);
    expect(luckRunLength({ score, mean, ratio }) / exact).toBeGreaterThan(0.94);
    expect(luckRunLength({ score, mean, ratio }) / exact).toBeLessThan(1.06);
  });
});

// By simulation of the sum itself, at a mean between two of the table: 400 runs, standard error 5 %.
test("a mean between those of the table agrees with running the sum", () => {
  const draws = seededDraws(7);
  const [mean, ratio, score] = [0.5, 2, 4] as const;
  let weeks = 0;
  const runs = 400;
  for (let run = 0; run < runs; run++) {
    for (let sum = 0; sum < score; weeks++) sum = Math.max(0, sum + logRatio(draws.poisson(mean), mean, ratio, 1));
  }
  // A sum that passes the score overshoots it, so it lasts longer than one that could stop exactly there.
  const formula = luckRunLength({ score, mean, ratio });
  expect(weeks / runs / formula).toBeGreaterThan(0.85);
  expect(weeks / runs / formula).toBeLessThan(1.45);
});

test("the chance within a year is small where the run is long, and 1 at most", () => {
  expect(luckInAYear({ score: 12, mean: 0.3, ratio: 2 })).toBeLessThan(1e-4);
  expect(luckInAYear({ score: 0, mean: 5, ratio: 2 })).toBeLessThanOrEqual(1);
  expect(luckInAYear({ score: 0, mean: 5, ratio: 2 })).toBeGreaterThan(0.99);
});

test("a mean of 0 is the caller's mistake", () => {
  expect(() => luckRunLength({ score: 1, mean: 0, ratio: 2 })).toThrow(/mean/);
  expect(() => luckRunLength({ score: -1, mean: 1, ratio: 2 })).toThrow(/score/);
});
