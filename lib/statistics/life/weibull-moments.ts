import { logGammaOnePlus } from "../log-gamma";
import { requirePositive } from "../require";

/**
 * Mean and standard deviation of a Weibull life, in the unit of its scale.
 * @throws RangeError for a shape or scale that is not above 0
 * Checked: tests/statistics/life/small-parts.test.ts, NIST/SEMATECH e-Handbook 8.4.1.3.
 */
export function weibullMoments({ shape, scale }: { readonly shape: number; readonly scale: number }): LifeMoments {
  requirePositive("shape", shape);
  requirePositive("scale", scale);
  const first = logGammaOnePlus(1 / shape);
  const second = logGammaOnePlus(2 / shape);
  const mean = scale * Math.exp(first);
  // The variance as a relative excess: the plain difference of squares loses its digits for large shapes.
  return { mean, standardDeviation: mean * Math.sqrt(Math.expm1(second - 2 * first)) };
}

export interface LifeMoments {
  readonly mean: number;
  readonly standardDeviation: number;
}
