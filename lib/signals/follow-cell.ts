import type { CellWeeks } from "./cell-weeks";
import { blockOf, firstWeekOf, settledUntil } from "./weeks";

/** Where a cell stands at the end of one week. */
export interface CellStanding {
  /** Sum of log-likelihood ratios since it was last 0. */
  readonly score: number;
  /** First week after the sum was last 0. */
  readonly onsetWeek: number;
  /** On record since the onset, and what the ages of the units predict of it, as far as it can be on record by now. */
  readonly observed: number;
  readonly expected: number;
  /** Expected count of a usual week, over the last four quarters, with what is tolerated: what luck is reckoned with. */
  readonly weeklyMean: number;
}

/** Where a cell stood at the end of a quarter that does not change any more. */
export interface SettledSum extends Omit<CellStanding, "weeklyMean"> {
  /** Of the two quarters up to then: sum of what is expected with what is tolerated, and weeks with an expectation. */
  readonly yearMean: number;
  readonly yearWeeks: number;
}

/** No sum grows beyond this, so that a cell that is mended can come down again within a year or so. */
export const mostScore = 25;

type FollowedWeeks = Pick<CellWeeks, "firstWeek" | "expected" | "observed" | "tolerated" | "clumped" | "unknownAt">;

/**
 * Follows one cell from week to week by a cumulative sum of log-likelihood ratios: is the rate `ratio` times what is
 * tolerated, or only that much? It never falls below 0, so that good years cannot hide a bad month. What is tolerated lies above what is expected by as much as the groups of
 * this company differ anyway, and as the expectation itself is in doubt.
 * Where a week's jobs come in clumps, counts are taken as negative binomial.
 * The weeks of this quarter and the one before count as they stand, the newest with the share of their jobs that can be on
 * record by now; all before are settled.
 * @param cell    its weeks; nothing is followed before there is an expectation
 * @param at      weeks for whose end the standing is wanted, ascending
 * @param knownWithin  see SignalRecord
 * @returns a standing per week asked for; undefined while there is no expectation
 * Source: Page (1954), Biometrika 41, 100-115; Lucas (1985), Technometrics 27, 129-144; Höhle & Paul (2008),
 *   Computational Statistics & Data Analysis 52, 4357-4368, for likelihood ratios of varying and clumped counts;
 *   Kalbfleisch, Lawless & Robinson (1991), Technometrics 33, 273-285, for the share on record.
 * Checked: tests/signals/follow-cell.test.ts, by hand and against the plain Poisson sums of lib/statistics.
 */
export function followCell(cell: FollowedWeeks, { at, ...options }: FollowOptions): (CellStanding | undefined)[] {
  let settled = settle(undefined, cell, cell.firstWeek, options.ratio);
  return at.map((week) => {
    settled = settle(settled, cell, settledUntil(week), options.ratio);
    return standingAfter(settled, cell, week, options);
  });
}

interface ReadOptions {
  readonly knownWithin: readonly number[];
  readonly ratio: number;
}

export interface FollowOptions extends ReadOptions {
  readonly at: readonly number[];
}

/** @param from  what was settled before, up to a week of the cell; undefined: nothing */
export function settle(from: SettledUpTo | undefined, cell: FollowedWeeks, until: number, ratio: number): SettledUpTo {
  const sum: Sum = from === undefined ? fresh(cell.firstWeek) : { ...from };
  const end = Math.max(from?.until ?? cell.firstWeek, until);
  for (let week = from?.until ?? cell.firstWeek; week < end; week++)
    advance(sum, cell, week, Number.POSITIVE_INFINITY, 1, ratio);
  const year = meansOf(cell, firstWeekOf(blockOf(until) - quartersBefore), until);
  return { ...sum, until: end, yearMean: year.sum, yearWeeks: year.weeks };
}

interface SettledUpTo extends SettledSum {
  readonly until: number;
}

/** @param cell  with the weeks that are not settled, at least */
export function standingAfter(
  settled: SettledSum,
  cell: FollowedWeeks,
  week: number,
  { knownWithin, ratio }: ReadOptions,
): CellStanding | undefined {
  const { score, onsetWeek, observed, expected, yearMean, yearWeeks } = settled;
  const standing: Sum = { score, onsetWeek, observed, expected };
  const from = Math.max(cell.firstWeek, settledUntil(week));
  for (let recent = from; recent <= week; recent++)
    advance(standing, cell, recent, week, knownWithin[week - recent] ?? 1, ratio);
  const year = meansOf(cell, from, week + 1);
  const weeks = yearWeeks + year.weeks;
  return weeks === 0 ? undefined : { ...standing, weeklyMean: (yearMean + year.sum) / weeks };
}

/** With the quarter of a week and the one before they make four. */
const quartersBefore = 2;

/** Changed from week to week: a large company has fifty million cell-weeks, too many to make each anew. */
type Sum = { -readonly [key in Exclude<keyof CellStanding, "weeklyMean">]: number };

function fresh(week: number): Sum {
  return { score: 0, onsetWeek: week, observed: 0, expected: 0 };
}

function advance(sum: Sum, cell: FollowedWeeks, week: number, seenAt: number, share: number, ratio: number): void {
  const place = week - cell.firstWeek;
  const expected = (cell.expected[place] ?? 0) * share;
  if (!(expected > 0)) return;
  const called = cell.observed[place] ?? 0;
  const observed = called === 0 ? 0 : called - cell.unknownAt(week, seenAt);
  if (observed === 0 && sum.score === 0) {
    sum.onsetWeek = week + 1;
    return;
  }
  const tolerated = expected * toleratedIn(cell, week);
  const score = Math.min(mostScore, sum.score + logRatio(observed, tolerated, ratio, clumpedIn(cell, week)));
  // A sum within rounding of zero is zero: otherwise the onset would hang on the last digit of an expectation.
  if (score < 1e-9) {
    sum.score = 0;
    sum.onsetWeek = week + 1;
    sum.observed = 0;
    sum.expected = 0;
    return;
  }
  sum.score = score;
  sum.observed += observed;
  sum.expected += expected;
}

/**
 * Log-likelihood of `ratio` times the mean against the mean.
 * @param clumped  variance of the count over its mean, 1 or more; 1: Poisson. More: negative binomial, of one size at both means
 */
export function logRatio(count: number, mean: number, ratio: number, clumped: number): number {
  if (!(clumped > 1)) return count * Math.log(ratio) - (ratio - 1) * mean;
  const size = mean / (clumped - 1);
  return (
    count * (Math.log(ratio) + Math.log((size + mean) / (size + ratio * mean))) -
    size * Math.log((size + ratio * mean) / (size + mean))
  );
}

export function toleratedIn(cell: Pick<CellWeeks, "firstWeek" | "tolerated">, week: number): number {
  return cell.tolerated[blockOf(week) - blockOf(cell.firstWeek)] ?? 1;
}

function clumpedIn(cell: FollowedWeeks, week: number): number {
  return cell.clumped[blockOf(week) - blockOf(cell.firstWeek)] ?? 1;
}

function meansOf(cell: FollowedWeeks, from: number, until: number): { readonly sum: number; readonly weeks: number } {
  let [sum, weeks] = [0, 0];
  for (let at = Math.max(cell.firstWeek, from); at < until; at++) {
    const expected = cell.expected[at - cell.firstWeek] ?? 0;
    if (!(expected > 0)) continue;
    sum += expected * toleratedIn(cell, at);
    weeks += 1;
  }
  return { sum, weeks };
}
