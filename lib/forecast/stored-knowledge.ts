import type { ProductType } from "@/lib/domain/product-type";
import type { LevelModel } from "@/lib/statistics/demand/level-model";
import type { DemandKnowledge } from "./forecast-demand";

/** Knowledge of all parts as plain values, fit to be kept as JSON. */
export interface StoredKnowledge {
  readonly now: StoredLevels;
  readonly beforeTest: StoredLevels;
  /** Missing in knowledge from before seasons of machines were looked at. */
  readonly seasons?: readonly TypeSeason[];
}

/** How the failures of one kind of machine follow the year, where they do: a factor for each month, January first. */
export interface TypeSeason {
  readonly productType: ProductType;
  readonly now: readonly number[] | undefined;
  readonly beforeTest: readonly number[] | undefined;
}

type StoredLevels = Omit<LevelModel, "start" | "moves" | "counts"> & {
  readonly start: readonly number[];
  readonly moves: readonly (readonly number[])[];
  readonly counts: readonly (readonly number[])[];
};

export function storedKnowledge({ now, beforeTest }: DemandKnowledge): StoredKnowledge {
  return { now: plain(now), beforeTest: plain(beforeTest) };
}

export function knowledgeOf({ now, beforeTest }: StoredKnowledge): DemandKnowledge {
  return { now: levels(now), beforeTest: levels(beforeTest) };
}

function plain(model: LevelModel): StoredLevels {
  return {
    ...model,
    start: [...model.start],
    moves: model.moves.map((row) => [...row]),
    counts: model.counts.map((row) => [...row]),
  };
}

function levels(model: StoredLevels): LevelModel {
  return {
    ...model,
    start: Float64Array.from(model.start),
    moves: model.moves.map((row) => Float64Array.from(row)),
    counts: model.counts.map((row) => Float64Array.from(row)),
  };
}
