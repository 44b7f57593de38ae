import type { Tails } from "./incomplete-gamma";
import { stirlingError } from "./log-gamma";
import { devianceOf } from "./special/deviance";
import { productLess } from "./special/product-less";

/**
 * Regularised incomplete beta function: the lower and the upper tail of a beta distribution at x.
 * Each keeps its relative accuracy (about 1e-13) where it is small, for parameters up to 1e7. Binomial tails are
 * the same thing: P(X >= k | n, p) = lower(k, n − k + 1, p).
 * @param a, b above 0
 * @param x    0..1
 * @throws RangeError for an argument outside its range
 * Source: continued fraction, even part of DLMF 8.17.22 in the form of DiDonato & Morris (1992), ACM TOMS 18, 360-373,
 *   by the modified Lentz method; saddle-point factor, Loader (2000).
 * Checked: tests/statistics/special/incomplete-beta.test.ts, against 40-digit values and R.
 */
export function incompleteBeta(a: number, b: number, x: number): Tails {
  return incompleteBetaAt(a, b, { x, y: 1 - x });
}

/** The same where the caller knows both x and y = 1 − x: near 1, y carries the digits that x cannot hold. */
export function incompleteBetaAt(a: number, b: number, { x, y }: UnitSplit): Tails {
  requireParameter("a", a);
  requireParameter("b", b);
  if (!(x >= 0 && x <= 1)) throw new RangeError(`x must lie in 0..1; it is ${x}`);
  if (x === 0) return { lower: 0, upper: 1 };
  if (y === 0) return { lower: 1, upper: 0 };
  const weight = betaWeight(a, b, { x, y });
  const above = aboveMean(a, b, { x, y });
  if (above < 0) {
    const lower = weight * fraction({ a, b, x, y, below: -above });
    return { lower, upper: 1 - lower };
  }
  const upper = weight * fraction({ a: b, b: a, x: y, y: x, below: above });
  return { lower: 1 - upper, upper };
}

export interface UnitSplit {
  readonly x: number;
  readonly y: number;
}

/** x^a (1 − x)^b / B(a, b): the slope of the lower tail against the logit of x. */
export function betaWeight(a: number, b: number, { x, y }: UnitSplit): number {
  const n = a + b;
  const correction = stirlingError(n) - stirlingError(a) - stirlingError(b);
  const difference = aboveMean(a, b, { x, y });
  const distance = devianceOf({ a, x: n * x, difference }) + devianceOf({ a: b, x: n * y, difference: -difference });
  return Math.sqrt((a / n) * (b / (2 * Math.PI))) * Math.exp(correction - distance);
}

/** (a + b) x − a, from whichever of x and y holds more digits: near 0 or 1 the other one has lost them. */
function aboveMean(a: number, b: number, { x, y }: UnitSplit): number {
  return x <= y ? productLess(a + b, x, a) : -productLess(a + b, y, b);
}

function requireParameter(name: string, value: number): void {
  if (!(value > 0 && value < Number.POSITIVE_INFINITY)) {
    throw new RangeError(`${name} must be a finite number above 0; it is ${value}`);
  }
}

/** `below` is a − (a + b) x, 0 or more; written with it, no term cancels. */
function fraction({ a, b, x, y, below }: { a: number; b: number; x: number; y: number; below: number }): number {
  const most = 500 + 20 * Math.sqrt(a + b);
  let denominator = (a / (a + 1)) * (1 + below);
  let c = Number.MAX_VALUE;
  let d = 1 / denominator;
  let value = d;
  for (let n = 1; n < most; n++) {
    const odd = a + 2 * n - 1;
    const numerator = ((a + n - 1) / odd) * ((a + b + n - 1) / odd) * n * (b - n) * x * x;
    if (numerator === 0) break;
    denominator = n + (n * (b - n) * x) / odd + ((a + n) / (odd + 2)) * (1 + below + n * (1 + y));
    d = 1 / nonZero(denominator + numerator * d);
    c = nonZero(denominator + numerator / c);
    const factor = c * d;
    value *= factor;
    if (Math.abs(factor - 1) < 3e-16) break;
  }
  return value;
}

function nonZero(value: number): number {
  return Math.abs(value) < 1e-300 ? 1e-300 : value;
}
