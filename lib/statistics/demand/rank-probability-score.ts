import { negativeBinomialAtLeast, negativeBinomialAtMost } from "../discrete/negative-binomial";
import { poissonAtLeast, poissonAtMost } from "../discrete/poisson";
import { normalCdf, normalDensity } from "../normal";
import { requireFinite, requireNonNegative, requirePositive } from "../require";

/**
 * Continuous ranked probability score of a whole predictive distribution against what happened: the absolute error
 * generalised, in the unit of the quantity, smaller is better, and honest (no other forecast than the one believed
 * scores better on average).
 * @param forecast normal, uniform, Poisson, negative binomial (size = gamma shape), or a sample of at least one draw
 * @param outcome  what happened; a whole number for the two count distributions
 * @throws RangeError for an argument outside its range
 * Source: Gneiting & Raftery (2007), JASA 102, 359-378, sections 4.1-4.2.
 * Checked: tests/statistics/demand.test.ts (case F05), by numerical integration of the definition.
 */
export function rankProbabilityScore(forecast: PredictiveDistribution, outcome: number): number {
  requireFinite("outcome", outcome);
  switch (forecast.kind) {
    case "normal":
      return normalScore(forecast, outcome);
    case "uniform":
      return uniformScore(forecast, outcome);
    case "sample":
      return sampleScore(forecast.draws, outcome);
    case "poisson": {
      const { mean } = forecast;
      return countScore({
        below: (k) => poissonAtMost(k, mean),
        above: (k) => poissonAtLeast(k + 1, mean),
        outcome,
        mean,
      });
    }
    case "negative-binomial": {
      const below = (k: number) => negativeBinomialAtMost(k, forecast);
      return countScore({
        below,
        above: (k) => negativeBinomialAtLeast(k + 1, forecast),
        outcome,
        mean: forecast.mean,
      });
    }
  }
}

export type PredictiveDistribution =
  | { readonly kind: "normal"; readonly mean: number; readonly standardDeviation: number }
  | { readonly kind: "uniform"; readonly from: number; readonly to: number }
  | { readonly kind: "poisson"; readonly mean: number }
  | { readonly kind: "negative-binomial"; readonly size: number; readonly mean: number }
  | { readonly kind: "sample"; readonly draws: readonly number[] };

function normalScore(
  { mean, standardDeviation }: { mean: number; standardDeviation: number },
  outcome: number,
): number {
  requirePositive("standardDeviation", standardDeviation);
  const z = (outcome - mean) / standardDeviation;
  return standardDeviation * (z * (2 * normalCdf(z) - 1) + 2 * normalDensity(z) - 1 / Math.sqrt(Math.PI));
}

function uniformScore({ from, to }: { from: number; to: number }, outcome: number): number {
  const width = to - from;
  requirePositive("to − from", width);
  const place = (outcome - from) / width;
  const inside = Math.min(1, Math.max(0, place));
  return width * (Math.abs(place - inside) + (inside ** 3 + (1 - inside) ** 3) / 3);
}

interface CountForecast {
  readonly below: (count: number) => number;
  readonly above: (count: number) => number;
  readonly outcome: number;
  readonly mean: number;
}

/** Σ F(k)² below the outcome and (1 − F(k))² from it on, until what is left cannot show. */
function countScore({ below, above, outcome, mean }: CountForecast): number {
  if (!Number.isSafeInteger(outcome) || outcome < 0) {
    throw new RangeError(`outcome must be a whole number, 0 or more; it is ${outcome}`);
  }
  requireNonNegative("mean", mean);
  let sum = 0;
  for (let k = 0; k < outcome; k++) sum += below(k) ** 2;
  for (let k = outcome; ; k++) {
    const part = above(k) ** 2;
    sum += part;
    if (k > mean && part <= 1e-18 * sum) return sum;
  }
}

/** Mean distance to the outcome less half the mean distance between two draws, the latter from the sorted draws. */
function sampleScore(draws: readonly number[], outcome: number): number {
  if (draws.length === 0) throw new RangeError("draws must hold at least one value");
  const ascending = draws.toSorted((a, b) => a - b);
  const count = ascending.length;
  const toOutcome = ascending.reduce((sum, draw) => sum + Math.abs(draw - outcome), 0) / count;
  const between = ascending.reduce((sum, draw, i) => sum + draw * (2 * i + 1 - count), 0) / (count * count);
  return toOutcome - between;
}
