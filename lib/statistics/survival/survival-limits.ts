import { type Limits, limits, NOBODY_LEFT } from "./limits";

/**
 * The scale on which a survival interval is symmetric. `log-log` stays inside (0, 1) and holds its coverage in
 * small groups; `log` is what R's survfit shows unless told otherwise; `plain` must be cut off at 0 and 1.
 */
export type SurvivalInterval = "plain" | "log" | "log-log";

/**
 * Limits around a survival probability.
 * @param survival     estimate in [0, 1]
 * @param logVariance  variance of log survival (the Greenwood sum of d / (n (n − d)))
 * @param multiplier   half-width in standard errors: a normal quantile, or the critical value of a band
 * @returns limits in [0, 1]; none where survival is 0, since its variance cannot be estimated there
 * Source: Kalbfleisch and Prentice (2002), The Statistical Analysis of Failure Time Data, section 1.4.
 * Checked: tests/statistics/survival/kaplan-meier.test.ts, against R survfit for all three scales.
 */
export function survivalLimits({ survival, logVariance, multiplier, interval }: SurvivalLimitsInput): Limits {
  if (survival === 0) return NOBODY_LEFT;
  if (survival === 1) return limits(0, 1, 1);
  const arm = multiplier * Math.sqrt(logVariance);
  const error = survival * Math.sqrt(logVariance);
  switch (interval) {
    case "plain":
      return limits(error, Math.max(0, survival * (1 - arm)), Math.min(1, survival * (1 + arm)));
    case "log":
      return limits(error, survival * Math.exp(-arm), Math.min(1, survival * Math.exp(arm)));
    case "log-log": {
      const logSurvival = Math.log(survival);
      const spread = Math.exp(arm / Math.abs(logSurvival));
      return limits(error, Math.exp(logSurvival * spread), Math.exp(logSurvival / spread));
    }
  }
}

export interface SurvivalLimitsInput {
  readonly survival: number;
  readonly logVariance: number;
  readonly multiplier: number;
  readonly interval: SurvivalInterval;
}
