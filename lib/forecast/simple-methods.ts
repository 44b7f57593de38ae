import {
  type CountDistribution,
  countDistribution,
  empiricalDistribution,
} from "@/lib/statistics/demand/count-distribution";
import { croston } from "@/lib/statistics/demand/croston";
import type { SeededDraws } from "@/lib/statistics/demand/seeded-draws";
import { teunterSyntetosBabai } from "@/lib/statistics/demand/teunter-syntetos-babai";
import { type DemandFuture, type DemandMethod, type DemandMethodKey, knownCounts } from "./demand-method";

/**
 * The methods that any better one has to beat. All but the empirical one give a mean; around it stands a negative
 * binomial with the history's own variance over mean, so that they differ in the mean alone. Weights are 0.1, common
 * practice for slow parts (Syntetos & Boylan 2005 use 0.05 to 0.2).
 * Missing months are left out, as if the ones around them were neighbours.
 */
export const simpleMethods: readonly DemandMethod[] = [
  meanMethod("smoothing", "a smoothed mean", smoothed),
  meanMethod("teunter-syntetos-babai", "Teunter, Syntetos & Babai", (counts) => {
    const demands = counts.filter((count) => count > 0);
    if (demands.length === 0) return 0;
    const start = { size: meanOf(demands), chance: demands.length / counts.length };
    const found = teunterSyntetosBabai({ demand: counts, smoothing: { size: weight, chance: weight }, start });
    return found.kind === "forecast" ? found.perPeriod : 0;
  }),
  meanMethod("syntetos-boylan", "Syntetos & Boylan", (counts) => intermittent(counts, "syntetos-boylan")),
  meanMethod("croston", "Croston", (counts) => intermittent(counts, "croston")),
  meanMethod("mean", "the mean of all months", meanOf),
  meanMethod("last-value", "the last month again", (counts) => counts.at(-1) ?? 0),
  {
    key: "empirical",
    name: "the months as they were",
    prepare: (history) => (origin) => {
      const counts = knownCounts(history.slice(0, origin));
      return repeated(counts.length === 0 ? Float64Array.of(1) : empiricalDistribution(counts));
    },
  },
];

const weight = 0.1;

function meanMethod(key: DemandMethodKey, name: string, mean: (counts: readonly number[]) => number): DemandMethod {
  return {
    key,
    name,
    prepare: (history) => (origin) => {
      const counts = knownCounts(history.slice(0, origin));
      const expected = mean(counts);
      return repeated(countDistribution({ mean: expected, variance: expected * dispersionOf(counts) }));
    },
  };
}

function smoothed(counts: readonly number[]): number {
  return counts.reduce((level, count) => level + weight * (count - level), counts[0] ?? 0);
}

function intermittent(counts: readonly number[], method: "croston" | "syntetos-boylan"): number {
  const found = croston({
    demand: counts,
    smoothing: { size: weight, interval: weight },
    method,
    start: "mean-interval",
  });
  return found.kind === "forecast" ? found.perPeriod : 0;
}

/** Variance over mean; at least 1, since whole counts drawn from a mean vary at least as Poisson. */
function dispersionOf(counts: readonly number[]): number {
  const mean = meanOf(counts);
  if (counts.length < 2 || mean === 0) return 1;
  const squares = counts.reduce((sum, count) => sum + (count - mean) ** 2, 0);
  return Math.max(1, squares / (counts.length - 1) / mean);
}

function meanOf(counts: readonly number[]): number {
  return counts.length === 0 ? 0 : counts.reduce((sum, count) => sum + count, 0) / counts.length;
}

/** The same distribution every month, months independent of each other. */
function repeated(distribution: CountDistribution): DemandFuture {
  return {
    months: (horizon) => Array.from({ length: horizon }, () => distribution),
    path: (horizon, draws) => Array.from({ length: horizon }, () => drawCount(distribution, draws)),
  };
}

function drawCount(distribution: CountDistribution, draws: SeededDraws): number {
  let rest = draws.uniform();
  for (let count = 0; count < distribution.length; count++) {
    rest -= distribution[count] ?? 0;
    if (rest < 0) return count;
  }
  return distribution.length - 1;
}
