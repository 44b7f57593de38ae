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

/**
 * Futures of a whole from those of its parts, added row by row: part → component → total, so that every total is the
 * sum of its parts in each future. Adding quantiles instead would overstate the whole.
 * @throws RangeError where numbers of futures or months differ
 */
export function addedPaths(each: readonly DemandPaths[]): DemandPaths {
  const [first, ...others] = each;
  if (first === undefined) return [];
  for (const [i, paths] of others.entries()) {
    if (paths.length !== first.length || paths[0]?.length !== first[0]?.length)
      throw new RangeError(`each[${i + 1}] must hold as many futures and months as each[0]`);
  }
  return first.map((row, future) =>
    row.map((count, month) => others.reduce((sum, paths) => sum + (paths[future]?.[month] ?? 0), count)),
  );
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
