import { requireWholeNumber } from "../require";
import { highestLevelCount, type LevelModel, movedOn, priorLevelModel, weighCount } from "./level-model";

/**
 * Learns from many series at once how demand moves between levels, by maximum posterior probability (EM with the
 * backward pass of Baum and others). One series alone says little about how levels last or end; a thousand say much.
 * Nothing is learnt where no series is given: the prior stands.
 * @param series per series the count of each month, oldest first, or undefined where a month is missing; a series with
 *   a count above `highestLevelCount` is passed over
 * @param room a count that the model must have a place for, though no series may reach it
 * @throws RangeError for a count that is no whole number
 * Source: Baum, Petrie, Soules & Weiss (1970), Annals of Mathematical Statistics 41, 164-171; MacDonald & Zucchini
 *   (1997), Hidden Markov and Other Models for Discrete-valued Time Series.
 * Checked: tests/statistics/demand/levels.test.ts, against sums over all paths, and by recovery of a known model.
 */
export function learnLevels(
  series: readonly MonthlyCounts[],
  { room }: { readonly room: number } = { room: 0 },
): LevelModel {
  series.forEach((counts, i) => {
    counts.forEach((count, month) => {
      if (count !== undefined) requireWholeNumber(`series[${i}][${month}]`, count);
    });
  });
  const usable = series.filter((counts) => counts.every((count) => count === undefined || count <= highestLevelCount));
  const largest = Math.max(0, ...usable.map((counts) => Math.max(0, ...counts.map((count) => count ?? 0))));
  const prior = priorLevelModel(Math.max(largest, room));
  const months = usable.reduce((sum, counts) => sum + counts.filter((count) => count !== undefined).length, 0);
  if (months === 0) return prior;
  let model = prior;
  const apart = Math.max(1, usable.length / enoughSeries);
  const learnt = usable.filter((_, i) => Math.floor(i / apart) !== Math.floor((i - 1) / apart));
  for (let round = 0; round < rounds; round++) model = improved(model, prior, learnt);
  return { ...model, learntFromMonths: months };
}

export type MonthlyCounts = readonly (number | undefined)[];

/** After fifteen rounds a round gains under a thousandth of a month's log chance. */
const rounds = 15;
/** Series enough to learn from; more cost time and change little. They are taken evenly from all. */
const enoughSeries = 600;

/** Months of evidence that the prior is worth, per state: for its moves, its counts and its place at the start. */
const priorMonths = { moves: 20, counts: 100, start: 0.5 } as const;

interface Tallies {
  readonly start: Float64Array;
  readonly moves: readonly Float64Array[];
  readonly counts: readonly Float64Array[];
}

function improved(model: LevelModel, prior: LevelModel, series: readonly MonthlyCounts[]): LevelModel {
  const tallies: Tallies = {
    start: new Float64Array(model.start.length).fill(priorMonths.start),
    moves: prior.moves.map((row) => row.map((chance) => priorMonths.moves * chance)),
    counts: prior.counts.map((row) => row.map((chance) => priorMonths.counts * chance)),
  };
  const scratch: Scratch = [];
  for (const counts of series) addSeries(model, tallies, counts, scratch);
  return {
    ...model,
    start: shares(tallies.start),
    moves: tallies.moves.map(shares),
    counts: tallies.counts.map(shares),
  };
}

/** Columns of states, one per month, used again for every series: making them anew would take most of the time. */
type Scratch = Float64Array[];

/** Forward through the months and back again; every month's states and moves are added as shares. */
function addSeries(model: LevelModel, tallies: Tallies, counts: MonthlyCounts, scratch: Scratch): void {
  while (scratch.length < counts.length + 2) scratch.push(new Float64Array(model.start.length));
  const chances: number[] = [];
  let before = model.start;
  for (const [month, count] of counts.entries()) {
    const states = scratch[month] ?? before;
    if (month === 0) states.set(before);
    else movedOn(model, before, states);
    chances.push(count === undefined ? 1 : weighCount(model, states, { count, into: states }));
    before = states;
  }
  // What later months say about each state, as a factor.
  const later = (scratch[counts.length] ?? before).fill(1);
  const weight = scratch[counts.length + 1] ?? before;
  for (let month = counts.length - 1; month >= 0; month--) {
    const states = scratch[month] ?? later;
    const count = counts[month];
    if (count !== undefined) addCounts(tallies, states, later, count);
    if (month === 0) for (let s = 0; s < later.length; s++) add(tallies.start, s, (states[s] ?? 0) * (later[s] ?? 0));
    else {
      const earlier = scratch[month - 1] ?? states;
      stepBack({ model, tallies, earlier, later, weight, count, chance: chances[month] ?? 1 });
    }
  }
}

function addCounts(tallies: Tallies, states: Float64Array, later: Float64Array, count: number): void {
  for (let s = 0; s < later.length; s++) {
    const row = tallies.counts[s];
    if (row !== undefined) add(row, count, (states[s] ?? 0) * (later[s] ?? 0));
  }
}

interface StepBack {
  readonly model: LevelModel;
  readonly tallies: Tallies;
  readonly earlier: Float64Array;
  /** Factors of this month's states; overwritten with those of the month before. */
  readonly later: Float64Array;
  readonly weight: Float64Array;
  readonly count: number | undefined;
  readonly chance: number;
}

function stepBack({ model, tallies, earlier, later, weight, count, chance }: StepBack): void {
  const { rungs } = model;
  for (let s = 0; s < weight.length; s++) {
    weight[s] = ((later[s] ?? 0) * (count === undefined ? 1 : (model.counts[s]?.[count] ?? 0))) / chance;
  }
  for (let s = 0; s < later.length; s++) {
    const row = model.moves[s];
    const tally = tallies.moves[s];
    if (row === undefined || tally === undefined) continue;
    const first = s - (s % rungs);
    const here = earlier[s] ?? 0;
    let sum = 0;
    for (let rung = 0; rung < rungs; rung++) sum += (row[rung] ?? 0) * (weight[first + rung] ?? 0);
    later[s] = sum;
    // States that the series is not in add nothing to what is learnt of them.
    if (here < 1e-7) continue;
    for (let rung = 0; rung < rungs; rung++) {
      tally[rung] = (tally[rung] ?? 0) + here * (row[rung] ?? 0) * (weight[first + rung] ?? 0);
    }
  }
}

function add(column: Float64Array, place: number, amount: number): void {
  column[place] = (column[place] ?? 0) + amount;
}

function shares(weights: Float64Array): Float64Array {
  const total = weights.reduce((sum, weight) => sum + weight, 0);
  return weights.map((weight) => weight / total);
}
