import { requirePositive, requireWholeNumber } from "../require";
import { type CountDistribution, countDistribution } from "./count-distribution";
import type { SeededDraws } from "./seeded-draws";

/** What is believed of a mean rate: gamma with this shape, per this much exposure. */
export interface DiscountedLevel {
  readonly shape: number;
  readonly exposure: number;
  readonly discount: number;
  /** Variance of a count over its mean, given the rate; 1 is Poisson. */
  readonly dispersion: number;
}

/**
 * Gamma belief about a rate that forgets: before each month shape and exposure are multiplied by the discount, so that
 * the mean stays and the doubt grows; then the month's count is added. With a discount of 1 it is a fixed rate.
 * A dispersion above 1 lets a count of n say no more than n / dispersion Poisson events would.
 * @param months   count and exposure (1 for a plain month, more in season) oldest first; undefined where missing
 * @param prior    shape and exposure before the first month, above 0
 * @param discount in (0, 1]
 * @throws RangeError for an argument outside its range
 * Source: Smith & Miller (1986), JRSS B 48, 79-88; Harvey & Fernandes (1989), JBES 7, 407-417; dispersion as in
 *   quasi-likelihood, McCullagh & Nelder (1989), chapter 9.
 * Checked: tests/statistics/demand/discounted-level.test.ts, by hand and against the closed form of a fixed rate.
 */
export function discountedLevel({ months, prior, discount, dispersion }: DiscountedInput): DiscountedLevel {
  requirePositive("prior.shape", prior.shape);
  requirePositive("prior.exposure", prior.exposure);
  requirePositive("discount", discount);
  if (discount > 1) throw new RangeError(`discount must be at most 1; it is ${discount}`);
  if (!(dispersion >= 1)) throw new RangeError(`dispersion must be 1 or more; it is ${dispersion}`);
  let { shape, exposure } = prior;
  for (const [i, month] of months.entries()) {
    if (i > 0) {
      shape *= discount;
      exposure *= discount;
    }
    if (month === undefined) continue;
    requireWholeNumber(`months[${i}].count`, month.count);
    shape += month.count / dispersion;
    exposure += month.exposure / dispersion;
  }
  return { shape, exposure, discount, dispersion };
}

export interface DiscountedInput {
  readonly months: readonly ({ readonly count: number; readonly exposure: number } | undefined)[];
  readonly prior: { readonly shape: number; readonly exposure: number };
  readonly discount: number;
  readonly dispersion: number;
}

/** Negative binomial of each coming month's count. @param exposures one per coming month */
export function discountedForecast(level: DiscountedLevel, exposures: readonly number[]): readonly CountDistribution[] {
  const mean = level.shape / level.exposure;
  const even = level.discount === 1 && exposures.every((exposure) => exposure === exposures[0]);
  let first: CountDistribution | undefined;
  return exposures.map((exposure, ahead) => {
    if (even && first !== undefined) return first;
    const shape = level.shape * level.discount ** (ahead + 1);
    const expected = mean * exposure;
    first = countDistribution({ mean: expected, variance: level.dispersion * expected + expected ** 2 / shape });
    return first;
  });
}

/**
 * One possible future: the rate is drawn, then multiplied each month by a beta draw over the discount, which keeps its
 * mean and widens it exactly as the forecast above does.
 */
export function discountedPath(level: DiscountedLevel, exposures: readonly number[], draws: SeededDraws): number[] {
  const { discount, dispersion } = level;
  let { shape } = level;
  let rate = draws.gamma(shape) / level.exposure;
  return exposures.map((exposure) => {
    if (discount < 1) {
      const kept = draws.gamma(discount * shape);
      rate *= kept / (kept + draws.gamma((1 - discount) * shape)) / discount;
      shape *= discount;
    }
    const mean = rate * exposure;
    // Counts bunched by the dispersion: Poisson given a gamma of that mean.
    const given = dispersion > 1 ? draws.gamma(mean / (dispersion - 1)) * (dispersion - 1) : mean;
    return draws.poisson(given);
  });
}
