import { requireWholeNumber } from "../require";

/**
 * The simple forecasts that any better one has to beat.
 * @param training at least one value (two for "drift", one season for "seasonal-naive"), oldest first
 * @param horizon  periods to forecast, whole number
 * @param method   "mean" of all; "naive" last value; "seasonal-naive" the value one season before; "drift" the line
 *   through the first and the last value
 * @param season   periods in a season, for "seasonal-naive" (12 for months of a year)
 * @throws RangeError where the training values are too few
 * Source: Hyndman & Athanasopoulos (2018), Forecasting: Principles and Practice, 2nd edition, section 3.1.
 * Checked: tests/statistics/demand.test.ts (case F03).
 */
export function benchmarkForecast({ training, horizon, method, season }: BenchmarkInput): readonly number[] {
  requireWholeNumber("horizon", horizon);
  const needed = { mean: 1, naive: 1, drift: 2, "seasonal-naive": Math.max(1, season) }[method];
  if (training.length < needed) {
    throw new RangeError(`training must hold at least ${needed} values for ${method}; it holds ${training.length}`);
  }
  const last = training.at(-1) ?? 0;
  const mean = training.reduce((sum, value) => sum + value, 0) / training.length;
  const slope = (last - (training[0] ?? 0)) / Math.max(1, training.length - 1);
  return Array.from({ length: horizon }, (_, step) => {
    switch (method) {
      case "mean":
        return mean;
      case "naive":
        return last;
      case "drift":
        return last + (step + 1) * slope;
      case "seasonal-naive":
        return training[training.length - season + (step % season)] ?? last;
    }
  });
}

export interface BenchmarkInput {
  readonly training: readonly number[];
  readonly horizon: number;
  readonly method: "mean" | "naive" | "seasonal-naive" | "drift";
  readonly season: number;
}
