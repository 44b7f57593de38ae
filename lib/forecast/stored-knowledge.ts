import type { LevelModel } from "@/lib/statistics/demand/level-model";
import type { DemandKnowledge } from "./forecast-demand";

/** Knowledge of all parts as plain values, fit to be kept as JSON. */
export interface StoredKnowledge {
  readonly now: StoredLevels;
  readonly beforeTest: StoredLevels;
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
