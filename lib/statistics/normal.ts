import {
  CENTRE_BOTTOM,
  CENTRE_TOP,
  MIDDLE_BOTTOM,
  MIDDLE_TOP,
  QUANTILE_CENTRE_BOTTOM,
  QUANTILE_CENTRE_TOP,
  QUANTILE_FAR_BOTTOM,
  QUANTILE_FAR_TOP,
  QUANTILE_MIDDLE_BOTTOM,
  QUANTILE_MIDDLE_TOP,
} from "./special/normal-coefficients";

/**
 * Standard normal distribution: probability at or below z, accurate to about 1e-15 relative in both tails
 * (ask for the upper tail as `normalCdf(-z)`, never as one minus the lower one).
 * @param z any finite or infinite number
 * @returns probability in [0, 1]
 * Source: W. J. Cody (1969), Rational Chebyshev approximations for the error function, Math. Comp. 23, 631-637;
 *   far tails by Laplace's continued fraction (Abramowitz & Stegun 26.2.14).
 * Checked: tests/statistics/special/normal.test.ts, against 40-digit values and R.
 */
export function normalCdf(z: number): number {
  if (Number.isNaN(z)) throw new RangeError(`z must be a number; it is ${z}`);
  const size = Math.abs(z);
  if (size <= 0.67448975) return 0.5 + centralExcess(z);
  const tail = size > 39 ? 0 : normalDecay(size) * (size <= Math.sqrt(32) ? middleFactor(size) : farFactor(size));
  return z > 0 ? 1 - tail : tail;
}

/** Density of the standard normal distribution. */
export function normalDensity(z: number): number {
  return normalDecay(Math.abs(z)) * INVERSE_ROOT_TWO_PI;
}

/**
 * The z below which the standard normal distribution holds `probability`; for the far upper tail negate the
 * quantile of the small upper probability.
 * @param probability strictly between 0 and 1
 * @throws RangeError for a probability outside (0, 1)
 * Source: M. J. Wichura (1988), Algorithm AS 241, Applied Statistics 37, 477-484, followed by one Halley step.
 * Checked: tests/statistics/special/normal.test.ts, against tests/reference/quantiles.tsv.
 */
export function normalQuantile(probability: number): number {
  if (!(probability > 0 && probability < 1)) {
    throw new RangeError(`probability must lie strictly between 0 and 1; it is ${probability}`);
  }
  const offset = probability - 0.5;
  if (Math.abs(offset) <= 0.425) {
    const r = 0.180625 - offset * offset;
    return (offset * polynomial(QUANTILE_CENTRE_TOP, r)) / polynomial(QUANTILE_CENTRE_BOTTOM, r);
  }
  const tail = Math.min(probability, 1 - probability);
  const first = -tailQuantile(Math.sqrt(-Math.log(tail)));
  const reached = normalCdf(first);
  const density = normalDensity(first);
  const improved = density > 0 ? first - halley(reached, tail, density, first) : first;
  return offset < 0 ? improved : -improved;
}

function halley(reached: number, tail: number, density: number, z: number): number {
  const newton = (reached - tail) / density;
  return newton / (1 + (newton * z) / 2);
}

function tailQuantile(r: number): number {
  return r <= 5
    ? polynomial(QUANTILE_MIDDLE_TOP, r - 1.6) / polynomial(QUANTILE_MIDDLE_BOTTOM, r - 1.6)
    : polynomial(QUANTILE_FAR_TOP, r - 5) / polynomial(QUANTILE_FAR_BOTTOM, r - 5);
}

const INVERSE_ROOT_TWO_PI = 0.3989422804014327;

/** exp(-z²/2) with the square split at sixteenths, so that a large square does not lose its last digits. */
function normalDecay(size: number): number {
  if (size > 39) return 0;
  const coarse = Math.trunc(size * 16) / 16;
  return Math.exp(-coarse * coarse * 0.5) * Math.exp(-(size - coarse) * (size + coarse) * 0.5);
}

function centralExcess(z: number): number {
  const square = z * z;
  return (z * polynomial(CENTRE_TOP, square)) / polynomial(CENTRE_BOTTOM, square);
}

function middleFactor(size: number): number {
  return polynomial(MIDDLE_TOP, size) / polynomial(MIDDLE_BOTTOM, size);
}

/** Laplace's continued fraction of the tail over the density, z > √32: forty levels leave nothing out. */
function farFactor(size: number): number {
  let fraction = size;
  for (let level = 40; level >= 1; level--) fraction = size + level / fraction;
  return INVERSE_ROOT_TWO_PI / fraction;
}

/** Coefficients from the constant term upwards. */
function polynomial(coefficients: readonly number[], at: number): number {
  return coefficients.reduceRight((sum, coefficient) => sum * at + coefficient, 0);
}
