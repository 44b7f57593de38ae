import { requireWholeNumber } from "../require";
import type { CountDistribution } from "./count-distribution";

/**
 * Chances of 0 … trials successes, built outward from the likeliest count by ratios of neighbours, so that nothing
 * underflows where there are many trials.
 * @param chance of a success, 0..1
 * @throws RangeError for an argument outside its range
 * Source: Johnson, Kemp & Kotz (2005), Univariate Discrete Distributions, section 3.3.
 * Checked: tests/stock/reorder-point.test.ts, against `discrete/binomial`.
 */
export function binomialDistribution(trials: number, chance: number): CountDistribution {
  requireWholeNumber("trials", trials);
  if (!(chance >= 0 && chance <= 1)) throw new RangeError(`chance must lie in 0..1; it is ${chance}`);
  const chances = new Float64Array(trials + 1);
  if (chance === 0 || chance === 1) {
    chances[chance * trials] = 1;
    return chances;
  }
  const odds = chance / (1 - chance);
  const mode = Math.min(trials, Math.floor((trials + 1) * chance));
  chances[mode] = 1;
  for (let k = mode; k < trials; k++) chances[k + 1] = ((chances[k] ?? 0) * odds * (trials - k)) / (k + 1);
  for (let k = mode; k > 0; k--) chances[k - 1] = ((chances[k] ?? 0) * k) / (odds * (trials - k + 1));
  const total = chances.reduce((sum, weight) => sum + weight, 0);
  return chances.map((weight) => weight / total);
}
