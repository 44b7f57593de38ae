import { binomialQuantile } from "../discrete/binomial";
import { requireProbability, requireWholeNumber } from "../require";

/**
 * Median with limits that hold whatever the values' distribution: two of the values themselves.
 * @param values      each value with how many times it was seen; finite, in any order
 * @param confidence  two-sided level in (0, 1); no default, the caller must choose
 * @returns median, low and high in the unit of the values; `too few` where even the smallest and largest value together
 *          are not sure enough (fewer than 6 values at 0.95)
 * @throws RangeError for a count that is not whole or a confidence outside its range
 * Source: Conover, Practical Nonparametric Statistics, 3rd ed. (1999), section 3.2: limits are the values of the ranks r and
 * n + 1 - r with the largest r for which P(X < r) stays at or below (1 - confidence) / 2, X binomial of n with chance 1/2.
 * Checked: tests/statistics/ordered-median.test.ts, by definition and against ranks of printed tables.
 */
export function orderedMedian(values: readonly CountedValue[], confidence: number): OrderedMedian {
  requireProbability("confidence", confidence);
  for (const { count } of values) requireWholeNumber("count", count);
  const sorted = values.filter(({ count }) => count > 0).toSorted((a, b) => a.value - b.value);
  const n = sorted.reduce((sum, { count }) => sum + count, 0);
  const rank = n === 0 ? 0 : binomialQuantile((1 - confidence) / 2, { trials: n, chance: 0.5 });
  if (rank < 1) return { kind: "too few", n };
  const at = (wanted: number) => valueAt(sorted, wanted);
  const median = (at(Math.floor((n + 1) / 2)) + at(Math.ceil((n + 1) / 2))) / 2;
  return { kind: "median", n, median, low: at(rank), high: at(n + 1 - rank) };
}

export interface CountedValue {
  readonly value: number;
  readonly count: number;
}

export type OrderedMedian =
  | {
      readonly kind: "median";
      readonly n: number;
      readonly median: number;
      readonly low: number;
      readonly high: number;
    }
  | { readonly kind: "too few"; readonly n: number };

/** @param rank from 1 to the number of values */
function valueAt(sorted: readonly CountedValue[], rank: number): number {
  let seen = 0;
  for (const { value, count } of sorted) {
    seen += count;
    if (seen >= rank) return value;
  }
  throw new RangeError(`rank: beyond the ${seen} values: ${rank}`);
}
