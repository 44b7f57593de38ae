import type { SeededDraws } from "@/lib/statistics/demand/seeded-draws";
import { type CountedShare, drawShare } from "../counted-share";
import type { FleetRecord } from "./fleet-record";

/** How repairs of a component take a part: so many of so many repairs, and pieces beyond what those repairs explain. */
export interface PartUse {
  /** Failures of machines whose age is known, over the months that are looked at. */
  readonly failures: number;
  /** Repairs that took the part, on machines of known age or not. */
  readonly took: number;
  readonly usesPart: CountedShare;
  /** Repairs for each failure of a machine whose age is known: above 1 where others take the part as well. */
  readonly perFailure: number;
}

/** Older repairs tell less of which parts are taken now. Own choice, no source. */
const monthsOfUse = 24;

/**
 * Use of a part over the last two years before a month, from pieces and from the failures of its fleet.
 * @param origin months of the history that are known
 * @param pieces mean number that a repair takes, where it takes any
 * @returns undefined where no failure or no use is known in those months
 */
export function partUse(
  history: readonly (number | undefined)[],
  { failures }: Pick<FleetRecord, "failures">,
  { origin, pieces }: { readonly origin: number; readonly pieces: number },
): PartUse | undefined {
  const from = Math.max(0, origin - monthsOfUse);
  const failed = sum(failures.slice(from, origin));
  const took = Math.round(sum(history.slice(from, origin).map((count) => count ?? 0)) / pieces);
  if (failed === 0 || took === 0) return undefined;
  const repairs = Math.max(failed, took);
  return { failures: failed, took, usesPart: { of: repairs, counted: took }, perFailure: repairs / failed };
}

/** Mean and mean square of the share of failures that takes the part. */
export function shareMoments({ usesPart: { of, counted }, perFailure }: PartUse): {
  readonly mean: number;
  readonly square: number;
} {
  const [yes, all] = [counted + 0.5, of + 1];
  const mean = yes / all;
  return { mean: mean * perFailure, square: ((mean * (yes + 1)) / (all + 1)) * perFailure ** 2 };
}

/** One share that may be the true one. */
export function drawUse({ usesPart }: PartUse, draws: SeededDraws): number {
  return drawShare(usesPart, draws);
}

function sum(counts: readonly number[]): number {
  return counts.reduce((total, count) => total + count, 0);
}
