import { logGammaOnePlus, stirlingError } from "./log-gamma";
import { normalCdf } from "./normal";
import { deviance } from "./special/deviance";
import { UNIFORM_GAMMA_COEFFICIENTS } from "./special/uniform-gamma-coefficients";

/**
 * Regularised incomplete gamma functions: the lower and the upper tail of a gamma distribution with the given
 * shape and rate 1. Each tail keeps its relative accuracy (about 1e-13) where it is small, for shapes up to 1e6
 * and beyond. The tail of a Poisson count is the same thing: P(X <= k | mean) = upper(k + 1, mean).
 * @param shape above 0
 * @param x     0 or more; infinity is allowed
 * @returns lower and upper, which add to 1
 * @throws RangeError for an argument outside its range
 * Source: series and continued fraction, DLMF 8.11.4 and 8.9.2; uniform expansion, Temme (1979), DLMF 8.12.3-8.12.8;
 *   small shapes, Gil, Segura & Temme (2012), SIAM J. Sci. Comput. 34, A2965-A2981.
 * Checked: tests/statistics/special/incomplete-gamma.test.ts, against 40-digit values and R.
 */
export function incompleteGamma(shape: number, x: number): Tails {
  if (!(shape > 0 && shape < Number.POSITIVE_INFINITY)) {
    throw new RangeError(`shape must be a finite number above 0; it is ${shape}`);
  }
  if (!(x >= 0)) throw new RangeError(`x must be 0 or more; it is ${x}`);
  if (x === 0) return { lower: 0, upper: 1 };
  if (x === Number.POSITIVE_INFINITY) return { lower: 1, upper: 0 };
  if (shape >= 200 && Math.abs(x / shape - 1) < 0.5) return uniformExpansion(shape, x);
  if (x < shape + 1) {
    if (shape < 1 && x < 1) return smallShape(shape, x);
    const lower = poissonWeight(shape, x) * lowerSeries(shape, x);
    return { lower, upper: 1 - lower };
  }
  const upper = poissonWeight(shape, x) * shape * upperFraction(shape, x);
  return { lower: 1 - upper, upper };
}

export interface Tails {
  readonly lower: number;
  readonly upper: number;
}

/**
 * mean^count e^-mean / Γ(count + 1): the Poisson probability of a whole count, and the factor in front of every
 * incomplete gamma formula. Loader's form, because the plain one loses nine digits at a count of a million.
 */
export function poissonWeight(count: number, mean: number): number {
  if (mean === 0) return count === 0 ? 1 : 0;
  if (count < 0.5) return Math.exp(count * Math.log(mean) - mean - logGammaOnePlus(count));
  return Math.exp(-stirlingError(count) - deviance(count, mean)) / Math.sqrt(2 * Math.PI * count);
}

/** Σ x^n / ((a + 1) … (a + n)). */
function lowerSeries(shape: number, x: number): number {
  let term = 1;
  let sum = 1;
  for (let n = 1; term > sum * 1e-17; n++) sum += term *= x / (shape + n);
  return sum;
}

/** Continued fraction of the upper tail, by the modified Lentz method; it needs about 6 √shape steps at worst. */
function upperFraction(shape: number, x: number): number {
  let b = x + 1 - shape;
  let c = Number.MAX_VALUE;
  let d = 1 / b;
  let value = d;
  const most = 500 + 20 * Math.sqrt(shape);
  for (let i = 1; i < most; i++) {
    const numerator = -i * (i - shape);
    b += 2;
    d = 1 / (numerator * d + b);
    c = b + numerator / c;
    const factor = c * d;
    value *= factor;
    if (Math.abs(factor - 1) < 2e-16) break;
  }
  return value;
}

/** Below shape 1 and x 1 the upper tail can be tiny while the lower is near 1: each is built from small parts. */
function smallShape(shape: number, x: number): Tails {
  const logFactor = shape * Math.log(x) - logGammaOnePlus(shape);
  let term = 1;
  let excess = 0;
  for (let k = 1; k < 100; k++) {
    term *= -x / k;
    const part = (term * shape) / (shape + k);
    excess += part;
    if (Math.abs(part) < 1e-18 * Math.abs(excess)) break;
  }
  const factor = Math.exp(logFactor);
  return { lower: factor * (1 + excess), upper: -Math.expm1(logFactor) - factor * excess };
}

function uniformExpansion(shape: number, x: number): Tails {
  const distance = deviance(shape, x);
  const side = x < shape ? -1 : 1;
  const z = side * Math.sqrt(2 * distance);
  const eta = z / Math.sqrt(shape);
  let sum = 0;
  for (let k = UNIFORM_GAMMA_COEFFICIENTS.length - 1; k >= 0; k--) {
    const row = UNIFORM_GAMMA_COEFFICIENTS[k] ?? [];
    let inner = 0;
    for (let n = row.length - 1; n >= 0; n--) inner = inner * eta + (row[n] ?? 0);
    sum = sum / shape + inner;
  }
  const correction = (Math.exp(-distance) / Math.sqrt(2 * Math.PI * shape)) * sum;
  return { lower: normalCdf(z) - correction, upper: normalCdf(-z) + correction };
}
