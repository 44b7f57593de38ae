import { type CountDistribution, mixedDistribution, type WeighedDistribution } from "./count-distribution";
import type { MonthlyCounts } from "./learn-levels";
import { afterCount, type LevelModel, movedOn } from "./level-model";
import type { SeededDraws } from "./seeded-draws";

/**
 * Where a series stands on the ladders of levels after its months, nothing of the future known.
 * @param counts one per month, oldest first; undefined where a month is missing, which changes nothing but time
 * @throws RangeError for a count that the model has no place for
 * Checked: tests/statistics/demand/levels.test.ts, against sums over all paths.
 */
export function presentLevels(model: LevelModel, counts: MonthlyCounts): Float64Array {
  return levelsOverTime(model, counts).at(-1) ?? model.start;
}

/** The same after each month; the last entry is the present. */
export function levelsOverTime(model: LevelModel, counts: MonthlyCounts): readonly Float64Array[] {
  const over: Float64Array[] = [];
  for (const [month, count] of counts.entries()) {
    const before = month === 0 ? model.start : movedOn(model, over[month - 1] ?? model.start);
    const length = model.counts[0]?.length ?? 0;
    if (count !== undefined && count >= length)
      throw new RangeError(`counts[${month}] must be below ${length}, the end of the model; it is ${count}`);
    over.push(count === undefined ? before : afterCount(model, before, count).states);
  }
  return over;
}

/**
 * Distribution of the count in each of the next months, exactly.
 * @param known whether `present` is after a month (the usual case) or the start of a series without months
 */
export function levelForecast(
  model: LevelModel,
  present: Float64Array,
  { months, known }: { readonly months: number; readonly known: boolean },
): readonly CountDistribution[] {
  let states = present;
  return Array.from({ length: months }, (_, ahead) => {
    if (ahead > 0 || known) states = movedOn(model, states);
    return mixedCounts(model, states);
  });
}

/** One possible future: a level for now, its moves, and a count of each month. */
export function levelPath(
  model: LevelModel,
  present: Float64Array,
  { months, known }: { readonly months: number; readonly known: boolean },
  draws: SeededDraws,
): number[] {
  const { rungs } = model;
  let state = drawPlace(present, draws.uniform());
  return Array.from({ length: months }, (_, ahead) => {
    if (ahead > 0 || known) {
      const first = state - (state % rungs);
      state = first + drawPlace(model.moves[state] ?? present, draws.uniform());
    }
    return drawPlace(model.counts[state] ?? present, draws.uniform());
  });
}

/** States of next to no chance are left out: they cost time and cannot show. */
function mixedCounts(model: LevelModel, states: Float64Array): CountDistribution {
  const parts: WeighedDistribution[] = [];
  for (let state = 0; state < states.length; state++) {
    const [weight, distribution] = [states[state] ?? 0, model.counts[state]];
    if (weight > 1e-8 && distribution !== undefined) parts.push({ weight, distribution });
  }
  return trimmed(mixedDistribution(parts));
}

function trimmed(distribution: CountDistribution): CountDistribution {
  let end = distribution.length;
  while (end > 1 && (distribution[end - 1] ?? 0) < 1e-11) end -= 1;
  return distribution.subarray(0, end);
}

function drawPlace(chances: Float64Array, uniform: number): number {
  let rest = uniform;
  for (let place = 0; place < chances.length; place++) {
    rest -= chances[place] ?? 0;
    if (rest < 0) return place;
  }
  return chances.length - 1;
}
