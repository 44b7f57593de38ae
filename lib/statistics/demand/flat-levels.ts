import type { LevelModel } from "./level-model";
import type { LevelTallies } from "./level-tallies";

/** A model as the passes through the months want it: plain columns, no lists of lists. */
export interface FlatLevels extends LevelTallies {
  readonly states: number;
  readonly rungs: number;
  readonly length: number;
}

export function flatLevels({ start, moves, counts, rungs }: LevelModel): FlatLevels {
  const states = start.length;
  const length = counts[0]?.length ?? 0;
  const flat = {
    start: start.slice(),
    moves: new Float64Array(states * rungs),
    counts: new Float64Array(states * length),
    states,
    rungs,
    length,
  };
  for (let state = 0; state < states; state++) {
    flat.moves.set(moves[state] ?? [], state * rungs);
    for (let count = 0; count < length; count++) flat.counts[count * states + state] = counts[state]?.[count] ?? 0;
  }
  return flat;
}

/** Back again; what else a model says is taken from `like`. */
export function levelsOf({ start, moves, counts, states, rungs, length }: FlatLevels, like: LevelModel): LevelModel {
  return {
    ...like,
    start: start.slice(),
    moves: Array.from({ length: states }, (_, state) => moves.slice(state * rungs, (state + 1) * rungs)),
    counts: Array.from({ length: states }, (_, state) =>
      Float64Array.from({ length }, (_value, count) => counts[count * states + state] ?? 0),
    ),
  };
}

export function emptyTallies({ start, moves, counts }: FlatLevels): LevelTallies {
  return {
    start: new Float64Array(start.length),
    moves: new Float64Array(moves.length),
    counts: new Float64Array(counts.length),
  };
}

/** Makes the model the one most probable after the tallies: each row of them as shares. */
export function setLikeliest(model: FlatLevels, total: LevelTallies): void {
  const { states, rungs, length } = model;
  setShares(model.start, total.start, { from: 0, step: 1, size: states });
  for (let state = 0; state < states; state++) {
    setShares(model.moves, total.moves, { from: state * rungs, step: 1, size: rungs });
    setShares(model.counts, total.counts, { from: state, step: states, size: length });
  }
}

function setShares(
  into: Float64Array,
  weights: Float64Array,
  { from, step, size }: { readonly from: number; readonly step: number; readonly size: number },
): void {
  let total = 0;
  for (let i = 0, at = from; i < size; i++, at += step) total += weights[at] ?? 0;
  for (let i = 0, at = from; i < size; i++, at += step) into[at] = (weights[at] ?? 0) / total;
}
