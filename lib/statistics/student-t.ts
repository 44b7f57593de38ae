import { betaQuantileSplit } from "./beta-quantile";
import { incompleteBetaAt } from "./incomplete-beta";
import { requirePositive, requireProbability } from "./require";

/**
 * The t below which Student's distribution holds `probability`.
 * @param probability      strictly between 0 and 1
 * @param degreesOfFreedom above 0, not necessarily whole
 * @throws RangeError for an argument outside its range
 * Source: DLMF 8.17 with x = ν / (ν + t²); Abramowitz & Stegun (1964) 26.7.
 * Checked: tests/statistics/special/quantiles.test.ts, against R.
 */
export function studentQuantile(probability: number, degreesOfFreedom: number): number {
  requireProbability("probability", probability);
  requirePositive("degreesOfFreedom", degreesOfFreedom);
  if (probability === 0.5) return 0;
  const tail = Math.min(probability, 1 - probability);
  const { x, y } = betaQuantileSplit(2 * tail, degreesOfFreedom / 2, 0.5);
  const size = Math.sqrt((degreesOfFreedom * y) / x);
  return probability < 0.5 ? -size : size;
}

/** Probability at or below t; ask for the upper tail as `studentCdf(-t, …)`. */
export function studentCdf(t: number, degreesOfFreedom: number): number {
  requirePositive("degreesOfFreedom", degreesOfFreedom);
  if (Number.isNaN(t)) throw new RangeError(`t must be a number; it is ${t}`);
  if (t === 0) return 0.5;
  const square = t * t;
  const split = { x: degreesOfFreedom / (degreesOfFreedom + square), y: square / (degreesOfFreedom + square) };
  const both = incompleteBetaAt(degreesOfFreedom / 2, 0.5, Number.isFinite(square) ? split : { x: 0, y: 1 }).lower;
  return t < 0 ? both / 2 : 1 - both / 2;
}
