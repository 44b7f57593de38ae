import { requirePositive } from "../require";

/**
 * How far a complete sample of failure ages lies from a Weibull life, with most weight on the tails (Anderson–Darling).
 * @param ages   failure ages above 0, any order, at least one; every life must have failed (no censoring, no late entry)
 * @param shape  Weibull shape, estimated from these ages
 * @param scale  Weibull scale in the unit of the ages, estimated from these ages
 * @returns statistic; adjusted for the sample size (comparable with `WEIBULL_CRITICAL_VALUES`); and the observed significance: the
 *          probability of a statistic as large when the Weibull is true. Below 0.05 the Weibull is in doubt.
 * @throws RangeError for an argument outside its range
 * Sources: Stephens in D'Agostino and Stephens (1986), Goodness-of-Fit Techniques, section 4.10;
 * the significance is the curve of MIL-HDBK-17-1, section 8.3.4, made for estimated parameters.
 * Checked: tests/statistics/life/anderson-darling.test.ts.
 */
export function andersonDarling({ ages, shape, scale }: WeibullSample): AndersonDarling {
  requirePositive("shape", shape);
  requirePositive("scale", scale);
  if (ages.length === 0) throw new RangeError("ages must hold at least one failure age");
  const hazards = Float64Array.from(ages, (age, i) => {
    requirePositive(`ages[${i}]`, age);
    return Math.exp(shape * Math.log(age / scale));
  }).sort();
  const count = hazards.length;
  const sum = hazards.reduce((total, hazard, i) => {
    const opposite = hazards[count - 1 - i] ?? 0;
    return total + (2 * i + 1) * (Math.log(-Math.expm1(-hazard)) - opposite);
  }, 0);
  const statistic = -count - sum / count;
  const adjusted = statistic * (1 + 0.2 / Math.sqrt(count));
  return { statistic, adjusted, significance: weibullSignificance(adjusted) };
}

export interface WeibullSample {
  readonly ages: readonly number[];
  readonly shape: number;
  readonly scale: number;
}

export interface AndersonDarling {
  readonly statistic: number;
  readonly adjusted: number;
  readonly significance: number;
}

/** Observed significance of an adjusted statistic above 0; good to about 0.002 between 0.01 and 0.25. */
export function weibullSignificance(adjusted: number): number {
  if (!(adjusted > 0)) throw new RangeError(`adjusted must be above 0; it is ${adjusted}`);
  return 1 / (1 + Math.exp(-0.1 + 1.24 * Math.log(adjusted) + 4.48 * adjusted));
}

/**
 * Adjusted statistics that a true Weibull exceeds with the given probability, both parameters estimated.
 * Source: Lawless (1982), Statistical Models and Methods for Lifetime Data, page 455 (after Stephens 1977).
 */
export const WEIBULL_CRITICAL_VALUES: readonly { readonly significance: number; readonly adjusted: number }[] = [
  { significance: 0.1, adjusted: 0.637 },
  { significance: 0.05, adjusted: 0.757 },
  { significance: 0.025, adjusted: 0.877 },
  { significance: 0.01, adjusted: 1.038 },
];
