import { expect, test } from "vitest";
import { poissonMidP } from "@/lib/statistics/intervals/poisson-mid-p";
import { poissonRate } from "@/lib/statistics/intervals/poisson-rate";
import { coverageCases, expectedCounts } from "./coverage-cases";
import { randomSource } from "./random-source";

// By simulation, seeded: 4,000 draws have a standard error of 0.35 points. The full table of 20,000 draws each is
// tests/reference/coverage.csv, written by simulate-coverage.ts.
const guaranteed = coverageCases(0.95).filter((one) => one.guaranteed);
test.each(guaranteed.map((one) => [one.method, one.setting, one] as const))(
  "%s covers at least 94.5 %% at %s",
  (_, setting, one) => {
    const random = randomSource(setting.length * 7919 + 13);
    const draws = 4000;
    let covered = 0;
    for (let run = 0; run < draws; run++) if (one.draw(random)) covered += 1;
    expect(covered / draws).toBeGreaterThanOrEqual(0.945);
  },
);

/** Chance that the interval holds the mean, summed over all counts: no simulation, no code of lib/statistics but it. */
function exactCoverage(mean: number, interval: (events: number) => { low: number; high: number }): number {
  let probability = Math.exp(-mean);
  let covered = 0;
  for (let events = 0; events < mean + 20 + 12 * Math.sqrt(mean); events++) {
    const { low, high } = interval(events);
    if (low <= mean && mean <= high) covered += probability;
    probability *= mean / (events + 1);
  }
  return covered;
}

// By definition, over a grid of means that no simulation picked.
test("the exact interval never covers less than 95 %, mid-P within four points and right on average", () => {
  const grid = [...expectedCounts, ...Array.from({ length: 120 }, (_, i) => 0.5 * 1.05 ** i)];
  const mid = grid.map((mean) =>
    exactCoverage(mean, (events) => poissonMidP({ events, exposure: 1, confidence: 0.95 })),
  );
  for (const mean of grid) {
    expect(
      exactCoverage(mean, (events) => poissonRate({ events, exposure: 1, confidence: 0.95 })),
    ).toBeGreaterThanOrEqual(0.95 - 1e-12);
  }
  expect(Math.min(...mid)).toBeGreaterThan(0.91);
  expect(mid.reduce((sum, value) => sum + value, 0) / mid.length).toBeGreaterThan(0.948);
});
