import { normalCdf, normalDensity } from "../normal";

const HALF_LOG_TWO_PI = 0.9189385332046728;

/**
 * Log of the upper tail of the standard normal distribution, and its hazard (density over upper tail), both good
 * far beyond the point where the tail itself underflows.
 * Source: Laplace's continued fraction; Abramowitz and Stegun 26.2.14.
 * Checked: tests/statistics/life/small-parts.test.ts.
 */
export function normalTail(z: number): { readonly log: number; readonly hazard: number } {
  if (z > 12) {
    let denominator = z;
    for (let k = 24; k >= 1; k--) denominator = z + k / denominator;
    return { log: -0.5 * z * z - HALF_LOG_TWO_PI - Math.log(denominator), hazard: denominator };
  }
  if (z < 0) {
    const below = normalCdf(z);
    return { log: Math.log1p(-below), hazard: normalDensity(z) / (1 - below) };
  }
  const above = normalCdf(-z);
  return { log: Math.log(above), hazard: normalDensity(z) / above };
}

/** Log density of the standard normal distribution. */
export function logNormalDensity(z: number): number {
  return -0.5 * z * z - HALF_LOG_TWO_PI;
}
