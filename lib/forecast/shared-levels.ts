import { levelForecast, levelPath, levelsOverTime } from "@/lib/statistics/demand/level-forecast";
import { highestLevelCount, type LevelModel } from "@/lib/statistics/demand/level-model";
import type { DemandMethod } from "./demand-method";

/** How long levels last and how they end is learnt from all parts; at which level this part stands, from its months. */
export function sharedLevels(model: LevelModel): DemandMethod {
  return {
    key: "shared-levels",
    name: "levels as all parts have them",
    prepare: (history) => {
      const over = levelsOverTime(model, history);
      return (origin) => {
        const present = origin === 0 ? model.start : (over[origin - 1] ?? model.start);
        const known = origin > 0;
        return {
          months: (horizon) => levelForecast(model, present, { months: horizon, known }),
          path: (horizon, draws) => levelPath(model, present, { months: horizon, known }, draws),
        };
      };
    },
  };
}

/** Whether the model has a place for each of the counts. */
export function fitsLevels(model: LevelModel, counts: readonly number[]): boolean {
  const largest = Math.max(0, ...counts);
  return largest <= highestLevelCount && largest < (model.counts[0]?.length ?? 0);
}
