import type { FlatLevels } from "./flat-levels";
import type { MonthlyCounts } from "./learn-levels";

/** Months that series spent in each state, moved from each to each, and showed each count there. */
export interface LevelTallies {
  readonly start: Float64Array;
  /** State by rung of its ladder. */
  readonly moves: Float64Array;
  /** Count by state: one count's states lie side by side. */
  readonly counts: Float64Array;
}

/** Where the passes keep the states of each month; used again for every series. */
export interface Scratch {
  readonly states: Float64Array;
  readonly chances: Float64Array;
  readonly later: Float64Array;
  readonly weight: Float64Array;
}

export function scratchFor(model: FlatLevels, months: number): Scratch {
  const { states } = model;
  return {
    states: new Float64Array(states * months),
    chances: new Float64Array(months),
    later: new Float64Array(states),
    weight: new Float64Array(states),
  };
}

/** Shares of a state too small to show in what is learnt. */
const tooSmall = 1e-8;

/**
 * Forward through the months of one series and back again, adding to the tallies what it says of starts, moves and
 * counts (Baum's forward and backward pass). Plain loops over plain columns: all the time of learning is spent here.
 */
export function tallySeries(model: FlatLevels, counts: MonthlyCounts, tallies: LevelTallies, scratch: Scratch): void {
  forward(model, counts, scratch);
  const { states } = model;
  const { later, weight } = scratch;
  later.fill(1);
  for (let month = counts.length - 1; month >= 0; month--) {
    const at = month * states;
    const count = counts[month];
    if (count !== undefined) {
      const row = count * states;
      for (let s = 0; s < states; s++) {
        tallies.counts[row + s] = at0(tallies.counts, row + s) + at0(scratch.states, at + s) * at0(later, s);
      }
      const scale = 1 / at0(scratch.chances, month);
      for (let s = 0; s < states; s++) weight[s] = at0(later, s) * at0(model.counts, row + s) * scale;
    } else weight.set(later);
    if (month > 0) stepBack(model, tallies, scratch, at - states);
    else {
      for (let s = 0; s < states; s++)
        tallies.start[s] = at0(tallies.start, s) + at0(scratch.states, s) * at0(later, s);
    }
  }
}

/** Moves into a month, seen from its end; `later` becomes what is said about the states of the month before. */
function stepBack({ states, rungs, moves }: FlatLevels, tallies: LevelTallies, scratch: Scratch, before: number): void {
  const { later, weight } = scratch;
  for (let s = 0; s < states; s++) {
    const here = at0(scratch.states, before + s);
    // Where the series can hardly have been, nothing is learnt, and nothing need be known of what came after.
    if (here < tooSmall) {
      later[s] = 0;
      continue;
    }
    const first = s - (s % rungs);
    const row = s * rungs;
    let sum = 0;
    for (let rung = 0; rung < rungs; rung++) {
      const part = at0(moves, row + rung) * at0(weight, first + rung);
      sum += part;
      tallies.moves[row + rung] = at0(tallies.moves, row + rung) + here * part;
    }
    later[s] = sum;
  }
}

function forward(model: FlatLevels, counts: MonthlyCounts, scratch: Scratch): void {
  const { states, rungs, moves } = model;
  const column = scratch.states;
  for (let month = 0; month < counts.length; month++) {
    const at = month * states;
    if (month === 0) column.set(model.start, 0);
    else {
      column.fill(0, at, at + states);
      for (let s = 0; s < states; s++) {
        const share = at0(column, at - states + s);
        if (share < tooSmall) continue;
        const first = at + s - (s % rungs);
        const row = s * rungs;
        for (let rung = 0; rung < rungs; rung++)
          column[first + rung] = at0(column, first + rung) + share * at0(moves, row + rung);
      }
    }
    const count = counts[month];
    if (count === undefined) continue;
    const row = count * states;
    let chance = 0;
    for (let s = 0; s < states; s++) {
      const part = at0(column, at + s) * at0(model.counts, row + s);
      column[at + s] = part;
      chance += part;
    }
    scratch.chances[month] = chance;
    for (let s = 0; s < states; s++) column[at + s] = at0(column, at + s) / chance;
  }
}

/** Within bounds by construction; the type of an index cannot say so. */
function at0(column: Float64Array, place: number): number {
  return column[place] ?? 0;
}
