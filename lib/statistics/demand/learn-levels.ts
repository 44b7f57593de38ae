import { requireWholeNumber } from "../require";
import { emptyTallies, flatLevels, levelsOf, setLikeliest } from "./flat-levels";
import { highestLevelCount, type LevelModel, priorLevelModel } from "./level-model";
import { type LevelTallies, scratchFor, tallySeries } from "./level-tallies";

/**
 * Learns from many series at once how demand moves between levels, by maximum posterior probability (EM with the
 * backward pass of Baum and others). One series alone says little about how levels last or end; a thousand say much.
 * The series are gone through in blocks, and the model is improved after each: that takes a quarter of the passes.
 * Nothing is learnt where no series is given: the prior stands.
 * @param series per series the count of each month, oldest first, or undefined where a month is missing; a series with
 *   a count above `highestLevelCount` is passed over
 * @param room a count that the model must have a place for, though no series may reach it
 * @param from a model learnt from most of the same months with the same room, from where fewer passes do
 * @throws RangeError for a count that is no whole number
 * Source: Baum, Petrie, Soules & Weiss (1970), Annals of Mathematical Statistics 41, 164-171; MacDonald & Zucchini
 *   (1997), Hidden Markov and Other Models for Discrete-valued Time Series; blocks as in Neal & Hinton (1998), Learning
 *   in Graphical Models, 355-368.
 * Checked: tests/statistics/demand/levels.test.ts, against sums over all paths, and by recovery of a known model.
 */
export function learnLevels(
  series: readonly MonthlyCounts[],
  { room, from }: { readonly room: number; readonly from?: LevelModel } = { room: 0 },
): LevelModel {
  series.forEach((counts, i) => {
    counts.forEach((count, month) => {
      if (count !== undefined) requireWholeNumber(`series[${i}][${month}]`, count);
    });
  });
  const usable = series.filter((counts) => counts.every((count) => count === undefined || count <= highestLevelCount));
  const largest = usable.reduce(
    (most, counts) => counts.reduce<number>((m, count) => Math.max(m, count ?? 0), most),
    0,
  );
  const prior = priorLevelModel(Math.max(largest, room));
  const months = usable.reduce((sum, counts) => sum + counts.filter((count) => count !== undefined).length, 0);
  if (months === 0) return prior;
  const apart = Math.max(1, usable.length / enoughSeries);
  const learnt = usable.filter((_, i) => Math.floor(i / apart) !== Math.floor((i - 1) / apart));
  const fits = from !== undefined && from.counts[0]?.length === prior.counts[0]?.length;
  const model = improvedInBlocks(
    prior,
    learnt,
    fits ? { from, passes: morePasses } : { from: prior, passes: allPasses },
  );
  return { ...model, learntFromMonths: months };
}

export type MonthlyCounts = readonly (number | undefined)[];

/** Passes through all series, and blocks that each is made in; after them a pass gains next to nothing. */
const allPasses = 24;
const morePasses = 5;
const blocks = 16;
/** Series enough to learn from; more cost time and change little. They are taken evenly from all. */
const enoughSeries = 1500;

/** Months of evidence that the prior is worth, per state: for its moves, its counts and its place at the start. */
const priorMonths = { moves: 20, counts: 100, start: 0.5 } as const;

function improvedInBlocks(
  prior: LevelModel,
  series: readonly MonthlyCounts[],
  { from, passes }: { readonly from: LevelModel; readonly passes: number },
): LevelModel {
  const parts = Array.from({ length: Math.min(blocks, series.length) }, (_, block) =>
    series.filter((_series, i) => i % blocks === block),
  );
  const model = flatLevels(from);
  // What was believed before counts as months seen; to it each block's newest tallies are added, its older ones taken off.
  const total = believed(prior);
  const latest = parts.map(() => emptyTallies(model));
  const scratch = scratchFor(
    model,
    series.reduce((most, counts) => Math.max(most, counts.length), 0),
  );
  for (let pass = 0; pass < passes; pass++) {
    for (const [block, part] of parts.entries()) {
      const before = latest[block];
      const tallies = emptyTallies(model);
      for (const counts of part) tallySeries(model, counts, tallies, scratch);
      if (before !== undefined) exchange(total, before, tallies);
      latest[block] = tallies;
      setLikeliest(model, total);
    }
  }
  return levelsOf(model, prior);
}

function believed(prior: LevelModel): LevelTallies {
  const { start, moves, counts } = flatLevels(prior);
  return {
    start: start.map(() => priorMonths.start),
    moves: moves.map((chance) => priorMonths.moves * chance),
    counts: counts.map((chance) => priorMonths.counts * chance),
  };
}

function exchange(total: LevelTallies, before: LevelTallies, after: LevelTallies): void {
  for (const name of ["start", "moves", "counts"] as const) {
    const [sum, old, fresh] = [total[name], before[name], after[name]];
    for (let i = 0; i < sum.length; i++) sum[i] = (sum[i] ?? 0) + (fresh[i] ?? 0) - (old[i] ?? 0);
  }
}
