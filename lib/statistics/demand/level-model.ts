import { type CountDistribution, countDistribution } from "./count-distribution";

/**
 * Demand that wanders between levels: each month it is at one of a ladder of mean rates and moves up, down or to the
 * lowest rung with chances that all series share. Three such ladders stand side by side, for steady, bunched and very
 * bunched demand; a series never changes ladder.
 */
export interface LevelModel {
  /** Rungs of one ladder, lowest first; states of the second ladder follow those of the first. */
  readonly rungs: number;
  readonly ladders: number;
  /** Chance of each state in a series' first month. */
  readonly start: Float64Array;
  /** Per state, the chances of moving to each rung of the same ladder. */
  readonly moves: readonly Float64Array[];
  /** Per state, the distribution of a month's count; all of one length. */
  readonly counts: readonly CountDistribution[];
  /** Iterations of learning, and months that were learnt from; 0 is the prior. */
  readonly learntFromMonths: number;
}

/** Above this a ladder of rungs is too coarse; such series are left to other methods. */
export const highestLevelCount = 400;

// The ladder and what is believed of it at first: own choice, no source; learning from all series corrects the belief.
const lowestRate = 0.01;
const ratio = 2;
/** Variance over mean within a rung: nearly Poisson, bunched, and very bunched. */
const dispersions = [1.05, 2, 5] as const;
/** A rung stands for rates around it: half a step either way is a coefficient of variation near 0.2. */
const rungSpread = 0.2;
const staying = 0.95;
/** Of the moves, those straight to the lowest rung: a part that is no longer asked for. */
const dying = 0.1;

/** What is believed before any series is seen: levels last about twenty months, moves are short, any level may begin. */
export function priorLevelModel(largestCount: number): LevelModel {
  const top = Math.max(40, 1.2 * Math.min(largestCount, highestLevelCount));
  const rungs = Math.ceil(Math.log(top / lowestRate) / Math.log(ratio)) + 1;
  const length = Math.ceil(2 * top) + 30;
  const rates = Array.from({ length: rungs }, (_, rung) => lowestRate * ratio ** rung);
  const counts = dispersions.flatMap((dispersion) =>
    rates.map((mean) =>
      fixedLength(countDistribution({ mean, variance: mean * (dispersion + rungSpread ** 2 * mean) }), length),
    ),
  );
  return {
    rungs,
    ladders: dispersions.length,
    start: new Float64Array(counts.length).fill(1 / counts.length),
    moves: counts.map((_, state) => priorMoves(state % rungs, rungs)),
    counts,
    learntFromMonths: 0,
  };
}

function priorMoves(from: number, rungs: number): Float64Array {
  const near = Float64Array.from({ length: rungs }, (_, to) =>
    to === from ? 0 : Math.exp(-Math.abs(to - from) / 0.7),
  );
  const total = near.reduce((sum, weight) => sum + weight, 0);
  const moves = near.map((weight) => ((1 - staying) * (1 - dying) * weight) / total);
  moves[from] = (moves[from] ?? 0) + staying;
  moves[0] = (moves[0] ?? 0) + (1 - staying) * dying;
  return moves;
}

/** Cut at the end of the table, and given that it ends there. */
function fixedLength(distribution: CountDistribution, length: number): CountDistribution {
  const row = new Float64Array(length);
  row.set(distribution.subarray(0, length));
  const total = row.reduce((sum, chance) => sum + chance, 0);
  return row.map((chance) => chance / total);
}

/** Chances of the states a month later. Plain loops: this is where learning and forecasting spend their time. */
export function movedOn(
  { rungs, moves }: LevelModel,
  states: Float64Array,
  next: Float64Array = new Float64Array(states.length),
): Float64Array {
  next.fill(0);
  for (let state = 0; state < states.length; state++) {
    const share = states[state] ?? 0;
    const row = moves[state];
    if (share < tooSmall || row === undefined) continue;
    const first = state - (state % rungs);
    for (let rung = 0; rung < rungs; rung++) {
      const to = first + rung;
      next[to] = (next[to] ?? 0) + share * (row[rung] ?? 0);
    }
  }
  return next;
}

/** Shares of a state that cannot show in any digit of a forecast. */
const tooSmall = 1e-14;

/** Chances of the states after a month's count is known, and the chance that the count had. */
export function afterCount(
  { counts }: LevelModel,
  states: Float64Array,
  count: number,
): { readonly states: Float64Array; readonly chance: number } {
  const joint = new Float64Array(states.length);
  return { states: joint, chance: weighCount({ counts }, states, { count, into: joint }) };
}

/** The same into a column of the caller's, which may be `states` itself; returns the chance that the count had. */
export function weighCount(
  { counts }: Pick<LevelModel, "counts">,
  states: Float64Array,
  { count, into: joint }: { readonly count: number; readonly into: Float64Array },
): number {
  let chance = 0;
  for (let state = 0; state < states.length; state++) {
    const part = (states[state] ?? 0) * (counts[state]?.[count] ?? 0);
    joint[state] = part;
    chance += part;
  }
  for (let state = 0; state < joint.length; state++) joint[state] = (joint[state] ?? 0) / chance;
  return chance;
}
