import { type CountDistribution, empiricalDistribution } from "@/lib/statistics/demand/count-distribution";
import { seededDraws } from "@/lib/statistics/demand/seeded-draws";
import { requirePositive, requireWholeNumber } from "@/lib/statistics/require";
import type { DemandFuture } from "./demand-method";

/** Possible futures: one row each, one number of parts per month. */
export type DemandPaths = readonly (readonly number[])[];

/** Futures of a forecast from history, as many as wanted; one seed gives one answer. */
export function demandPaths(
  future: DemandFuture,
  { horizon, futures, seed }: { readonly horizon: number; readonly futures: number; readonly seed: number },
): DemandPaths {
  requireWholeNumber("futures", futures);
  requirePositive("futures", futures);
  const draws = seededDraws(seed);
  return Array.from({ length: futures }, () => future.path(horizon, draws));
}

/** Distribution of the parts used in one month over all futures. */
export function monthOfPaths(paths: DemandPaths, month: number): CountDistribution {
  return empiricalDistribution(paths.map((row) => row[month] ?? 0));
}

/** Distribution of the parts used in the first months together: demand over a lead time. */
export function sumOfPaths(paths: DemandPaths, months: number): CountDistribution {
  requireWholeNumber("months", months);
  return empiricalDistribution(paths.map((row) => row.slice(0, months).reduce((sum, count) => sum + count, 0)));
}
