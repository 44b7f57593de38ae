import { requireProbability } from "../require";

/**
 * Loss of a quantile forecast: being below the outcome costs `probability` per unit, being above it the rest.
 * @param quantile    forecast value
 * @param probability that the forecast is a quantile of, in (0, 1)
 * @param outcome     what happened
 * @param scale       "plain", or "doubled" so that at one half it is the absolute error
 * @throws RangeError for an argument outside its range
 * Source: Koenker & Bassett (1978), Econometrica 46, 33-50; doubled in Hyndman & Athanasopoulos (2021),
 *   Forecasting: Principles and Practice, 3rd edition, section 5.9.
 * Checked: tests/statistics/demand.test.ts (case F07), by hand.
 */
export function pinballLoss({ quantile, probability, outcome, scale }: PinballInput): number {
  requireProbability("probability", probability);
  const gap = outcome - quantile;
  const loss = gap >= 0 ? probability * gap : (probability - 1) * gap;
  return scale === "doubled" ? 2 * loss : loss;
}

export interface PinballInput {
  readonly quantile: number;
  readonly probability: number;
  readonly outcome: number;
  readonly scale: "plain" | "doubled";
}
