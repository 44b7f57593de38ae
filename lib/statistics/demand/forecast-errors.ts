/**
 * How far point forecasts were from what happened.
 * @param actual, forecast one value per period, same length, at least one
 * @param training         the values the forecast was made from: their own seasonal naive error is the scale of MASE
 * @param season           lag of that scale; 1 for a series without season
 * @returns root mean square and mean absolute error in the unit of the series; the percentage error, which does not
 *   exist where an actual value is 0; the scaled error (below 1 beats the naive forecast on its own training
 *   values), which does not exist where the training values never change
 * @throws RangeError for arrays of different or too small length
 * Source: Hyndman & Koehler (2006), International Journal of Forecasting 22, 679-688.
 * Checked: tests/statistics/demand.test.ts (case F03).
 */
export function forecastErrors({ actual, forecast, training, season }: ForecastErrorsInput): ForecastErrors {
  if (actual.length === 0 || actual.length !== forecast.length) {
    throw new RangeError(
      `forecast must hold one value per actual value (${actual.length}); it holds ${forecast.length}`,
    );
  }
  if (!(Number.isInteger(season) && season >= 1 && training.length > season)) {
    throw new RangeError(
      `season must be a whole number, 1 or more and below the ${training.length} training values; it is ${season}`,
    );
  }
  const errors = actual.map((value, i) => value - (forecast[i] ?? 0));
  const meanAbsolute = meanOf(errors.map(Math.abs));
  const scale = meanOf(training.slice(season).map((value, i) => Math.abs(value - (training[i] ?? 0))));
  return {
    rootMeanSquare: Math.sqrt(meanOf(errors.map((error) => error * error))),
    meanAbsolute,
    percentage: actual.includes(0)
      ? { kind: "undefined-at-zero" }
      : { kind: "value", value: meanOf(errors.map((error, i) => Math.abs((100 * error) / (actual[i] ?? 1)))) },
    scaled: scale === 0 ? { kind: "constant-training" } : { kind: "value", value: meanAbsolute / scale },
  };
}

export interface ForecastErrorsInput {
  readonly actual: readonly number[];
  readonly forecast: readonly number[];
  readonly training: readonly number[];
  readonly season: number;
}

export interface ForecastErrors {
  readonly rootMeanSquare: number;
  readonly meanAbsolute: number;
  readonly percentage: { readonly kind: "value"; readonly value: number } | { readonly kind: "undefined-at-zero" };
  readonly scaled: { readonly kind: "value"; readonly value: number } | { readonly kind: "constant-training" };
}

function meanOf(values: readonly number[]): number {
  return values.reduce((sum, value) => sum + value, 0) / values.length;
}
