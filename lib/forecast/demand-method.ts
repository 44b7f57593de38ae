import type { CountDistribution } from "@/lib/statistics/demand/count-distribution";
import type { MonthlyCounts } from "@/lib/statistics/demand/learn-levels";
import type { SeededDraws } from "@/lib/statistics/demand/seeded-draws";

/** A way of forecasting demand from its history. */
export interface DemandMethod {
  readonly key: DemandMethodKey;
  /** As a sentence would name it. */
  readonly name: string;
  /** Looks at a history once; then it can be asked from any month, and never looks at that month or later ones. */
  readonly prepare: (history: MonthlyCounts) => PreparedMethod;
}

/** @param origin months of the history that are known: those before this position */
export type PreparedMethod = (origin: number) => DemandFuture;

export interface DemandFuture {
  readonly months: (horizon: number) => readonly CountDistribution[];
  /** One possible future, month by month; over many draws each month has the distribution above. */
  readonly path: (horizon: number, draws: SeededDraws) => readonly number[];
}

export type DemandMethodKey =
  | "fleet-lives"
  | "shared-levels"
  | "own-level"
  | "own-level-with-season"
  | "smoothing"
  | "teunter-syntetos-babai"
  | "syntetos-boylan"
  | "croston"
  | "mean"
  | "empirical"
  | "last-value";

export function knownCounts(history: MonthlyCounts): readonly number[] {
  return history.filter((count) => count !== undefined);
}
