import { requireNonNegative, requireWholeNumber } from "../require";

/**
 * Whether the counts of some periods scatter more than their sum, dealt out by chance, would: Pearson's statistic given the
 * sum, with the mean and variance that it has exactly when nothing clumps, however small the counts. Statistics, means and
 * variances of independent groups add up; their ratio then is the variance of a count over that of a Poisson count.
 * @param counts   of each period, whole numbers, 0 or more; their sum at least 2, since one event cannot clump
 * @param weights  what each period is expected to bring, in any unit, 0 or more; as many as counts. Periods of weight 0
 *   are left out with what is counted in them
 * @returns undefined where fewer than two periods or events are left, so that nothing can be told
 * @throws RangeError for an argument outside its range
 * Source: Haldane (1937), Biometrika 29, 133-143, for the exact moments; McCullagh & Nelder (1989), Generalized Linear
 *   Models, section 4.5, for the ratio as an estimate of dispersion.
 * Checked: tests/statistics/pearson-within.test.ts, by listing every outcome.
 */
export function pearsonWithin({ counts, weights }: PeriodCounts): PearsonWithin | undefined {
  if (counts.length !== weights.length)
    throw new RangeError(`weights: ${weights.length} given for ${counts.length} counts`);
  let [events, total, periods] = [0, 0, 0];
  for (let i = 0; i < counts.length; i++) {
    requireWholeNumber("counts", counts[i] ?? 0);
    requireNonNegative("weights", weights[i] ?? 0);
    if (!((weights[i] ?? 0) > 0)) continue;
    events += counts[i] ?? 0;
    total += weights[i] ?? 0;
    periods += 1;
  }
  if (events < 2 || periods < 2) return undefined;
  let [squares, inverse] = [0, 0];
  for (let i = 0; i < counts.length; i++) {
    const weight = weights[i] ?? 0;
    if (!(weight > 0)) continue;
    squares += ((counts[i] ?? 0) ** 2 * total) / weight;
    inverse += total / weight;
  }
  const tail = inverse - periods ** 2 - 2 * periods + 2;
  return {
    statistic: squares / events - events,
    mean: periods - 1,
    variance: 2 * (periods - 1) + tail / events,
  };
}

export interface PeriodCounts {
  readonly counts: ArrayLike<number>;
  readonly weights: ArrayLike<number>;
}

export interface PearsonWithin {
  readonly statistic: number;
  /** Of the statistic, where nothing clumps. */
  readonly mean: number;
  readonly variance: number;
}
