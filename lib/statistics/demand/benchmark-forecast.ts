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
  if (!(Number.isSafeInteger(season) && season >= 1)) {
    throw new RangeError(`season must be a whole number, 1 or more; it is ${season}`);
  }
  const needed = { mean: 1, naive: 1, drift: 2, "seasonal-naive": season }[method];
  if (training.length < needed) {
    throw new RangeError(`training must hold at least ${needed} values for ${method}; it holds ${training.length}`);
  }
  const value = forecastAt({ training, method, season });
  return Array.from({ length: horizon }, (_, step) => value(step));
}

export interface BenchmarkInput {
  readonly training: readonly number[];
  readonly horizon: number;
  readonly method: "mean" | "naive" | "seasonal-naive" | "drift";
  readonly season: number;
}

function forecastAt({ training, method, season }: Omit<BenchmarkInput, "horizon">): (step: number) => number {
  const last = training.at(-1) ?? 0;
  switch (method) {
    case "mean": {
      const mean = training.reduce((sum, value) => sum + value, 0) / training.length;
      return () => mean;
    }
    case "naive":
      return () => last;
    case "seasonal-naive":
      return (step) => training[training.length - season + (step % season)] ?? last;
    case "drift": {
      const slope = (last - (training[0] ?? last)) / (training.length - 1);
      return (step) => last + (step + 1) * slope;
    }
  }
}
