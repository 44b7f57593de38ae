import type { Tails } from "./incomplete-gamma";
import { stirlingError } from "./log-gamma";
import { deviance } from "./special/deviance";

/**
 * Regularised incomplete beta function: the lower and the upper tail of a beta distribution at x.
 * Each keeps its relative accuracy (about 1e-13) where it is small, for parameters up to 1e6. Binomial tails are
 * the same thing: P(X >= k | n, p) = lower(k, n − k + 1, p).
 * @param a, b above 0
 * @param x    0..1
 * @throws RangeError for an argument outside its range
 * Source: continued fraction, DLMF 8.17.22, by the modified Lentz method; saddle-point factor, Loader (2000).
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
  if (x * (a + b + 2) < a + 1) {
    const lower = (weight / a) * fraction(a, b, x);
    return { lower, upper: 1 - lower };
  }
  const upper = (weight / b) * fraction(b, a, y);
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
  return Math.sqrt((a / n) * (b / (2 * Math.PI))) * Math.exp(correction - deviance(a, n * x) - deviance(b, n * y));
}

function requireParameter(name: string, value: number): void {
  if (!(value > 0 && value < Number.POSITIVE_INFINITY)) {
    throw new RangeError(`${name} must be a finite number above 0; it is ${value}`);
  }
}

function fraction(a: number, b: number, x: number): number {
  const most = 500 + 20 * Math.sqrt(a + b);
  let c = 1;
  let d = 1 / nonZero(1 - ((a + b) * x) / (a + 1));
  let value = d;
  for (let m = 1; m < most; m++) {
    const even = (m * (b - m) * x) / ((a + 2 * m - 1) * (a + 2 * m));
    d = 1 / nonZero(1 + even * d);
    c = nonZero(1 + even / c);
    value *= d * c;
    const odd = (-(a + m) * (a + b + m) * x) / ((a + 2 * m) * (a + 2 * m + 1));
    d = 1 / nonZero(1 + odd * d);
    c = nonZero(1 + odd / c);
    const factor = d * c;
    value *= factor;
    if (Math.abs(factor - 1) < 3e-16) break;
  }
  return value;
}

function nonZero(value: number): number {
  return Math.abs(value) < 1e-300 ? 1e-300 : value;
}
