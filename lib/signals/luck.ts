import { requireNonNegative, requirePositive } from "@/lib/statistics/require";
import { type DesignRatio, luckConstants } from "./luck-constants";
import { weeksPerYear } from "./weeks";

/**
 * How often luck alone takes a cell's sum this high: the mean number of weeks between such rises while nothing is wrong.
 * The run length of a sum of log-likelihood ratios grows as A·exp(sum), where A depends on the mean count only; A was
 * computed from exact run lengths and is interpolated in the logarithm of the mean.
 * @param score  the sum, in units of log-likelihood, 0 or more
 * @param mean   count expected in a week while nothing is wrong, above 0
 * @param ratio  the sum is tuned to find
 * @throws RangeError for an argument outside its range
 * Source: Brook & Evans (1972), Biometrika 59, 539-549, for the run lengths; Lorden (1971), Annals of Mathematical
 *   Statistics 42, 1897-1908, for the exponential growth.
 * Checked: tests/signals/luck.test.ts, against exact run lengths and by simulation.
 */
export function luckRunLength({ score, mean, ratio }: LuckInput): number {
  requireNonNegative("score", score);
  requirePositive("mean", mean);
  return Math.exp(score) * constantAt(mean, luckConstants[ratio]);
}

/** Chance that luck alone brings such a sum about within a year. */
export function luckInAYear(input: LuckInput): number {
  return -Math.expm1(-weeksPerYear / luckRunLength(input));
}

export interface LuckInput {
  readonly score: number;
  readonly mean: number;
  readonly ratio: DesignRatio;
}

type Table = (typeof luckConstants)[DesignRatio];

/** Below the table the constant goes as 1 / mean, since time then is measured in events; above it the last one is a lower bound. */
function constantAt(mean: number, table: Table): number {
  const [first] = table;
  if (mean <= first[0]) return (first[1] * first[0]) / mean;
  for (let i = 1; i < table.length; i++) {
    const [low, high] = [table[i - 1] ?? first, table[i] ?? first];
    if (mean > high[0]) continue;
    const share = Math.log(mean / low[0]) / Math.log(high[0] / low[0]);
    return Math.exp((1 - share) * Math.log(low[1]) + share * Math.log(high[1]));
  }
  return (table[table.length - 1] ?? first)[1];
}
