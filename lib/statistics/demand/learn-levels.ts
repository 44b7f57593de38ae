import { requireWholeNumber } from "../require";
import { afterCount, highestLevelCount, type LevelModel, movedOn, priorLevelModel } from "./level-model";

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
  for (let round = 0; round < rounds; round++) model = improved(model, prior, usable);
  return { ...model, learntFromMonths: months };
}

export type MonthlyCounts = readonly (number | undefined)[];

/** After twenty rounds a round gains under a thousandth of a month's log chance. */
const rounds = 20;

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
  for (const counts of series) addSeries(model, tallies, counts);
  return {
    ...model,
    start: shares(tallies.start),
    moves: tallies.moves.map(shares),
    counts: tallies.counts.map(shares),
  };
}

/** Forward through the months and back again; every month's states and moves are added as shares. */
function addSeries(model: LevelModel, tallies: Tallies, counts: MonthlyCounts): void {
  const known: Float64Array[] = [];
  const chances: number[] = [];
  for (const [month, count] of counts.entries()) {
    const before = month === 0 ? model.start : movedOn(model, known[month - 1] ?? model.start);
    const seen = count === undefined ? { states: before, chance: 1 } : afterCount(model, before, count);
    known.push(seen.states);
    chances.push(seen.chance);
  }
  // What later months say about each state, as a factor.
  let later = new Float64Array(model.start.length).fill(1);
  for (let month = counts.length - 1; month >= 0; month--) {
    const states = known[month] ?? later;
    const count = counts[month];
    if (count !== undefined) addCounts(tallies, states, later, count);
    if (month === 0) for (let s = 0; s < later.length; s++) add(tallies.start, s, (states[s] ?? 0) * (later[s] ?? 0));
    else
      later = steppedBack({
        model,
        tallies,
        earlier: known[month - 1] ?? states,
        later,
        count,
        chance: chances[month] ?? 1,
      });
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
  readonly later: Float64Array;
  readonly count: number | undefined;
  readonly chance: number;
}

function steppedBack({ model, tallies, earlier, later, count, chance }: StepBack): Float64Array<ArrayBuffer> {
  const { rungs } = model;
  const weight = new Float64Array(later.length);
  for (let s = 0; s < weight.length; s++) {
    weight[s] = ((later[s] ?? 0) * (count === undefined ? 1 : (model.counts[s]?.[count] ?? 0))) / chance;
  }
  const back = new Float64Array(later.length);
  for (let s = 0; s < back.length; s++) {
    const row = model.moves[s];
    const tally = tallies.moves[s];
    if (row === undefined || tally === undefined) continue;
    const first = s - (s % rungs);
    const here = earlier[s] ?? 0;
    let sum = 0;
    for (let rung = 0; rung < rungs; rung++) sum += (row[rung] ?? 0) * (weight[first + rung] ?? 0);
    // States that the series is not in add nothing to what is learnt of them.
    if (here > 1e-7) {
      for (let rung = 0; rung < rungs; rung++) {
        tally[rung] = (tally[rung] ?? 0) + here * (row[rung] ?? 0) * (weight[first + rung] ?? 0);
      }
    }
    back[s] = sum;
  }
  return back;
}

function add(column: Float64Array, place: number, amount: number): void {
  column[place] = (column[place] ?? 0) + amount;
}

function shares(weights: Float64Array): Float64Array {
  const total = weights.reduce((sum, weight) => sum + weight, 0);
  return weights.map((weight) => weight / total);
}
