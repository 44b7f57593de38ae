/**
 * A log-likelihood at one point with its first and second derivatives, in the location m (mean level of log age)
 * and s, the logarithm of the spread of log age. On that scale the surface is close to a parabola.
 */
export interface Slopes {
  value: number;
  m: number;
  s: number;
  mm: number;
  ms: number;
  ss: number;
}

/** Log probability that a standard life falls between z values a and b, with its derivatives in a and b. */
export interface BoundedTerm {
  readonly value: number;
  readonly a: number;
  readonly b: number;
  readonly aa: number;
  readonly ab: number;
  readonly bb: number;
}

/** Adds `count` bounded failures: the chain rule from (a, b) to (m, s), where z = (y − m) / exp(s). */
export function addBounded(slopes: Slopes, term: BoundedTerm, bounds: BoundedPlace): void {
  const { za, zb, spread, count } = bounds;
  // A left-censored life has za = −Infinity and no dependence on it; 0 keeps the products finite.
  const a = za === Number.NEGATIVE_INFINITY ? 0 : za;
  const first = a * term.a + zb * term.b;
  slopes.value += count * term.value;
  slopes.m -= (count * (term.a + term.b)) / spread;
  slopes.s -= count * first;
  slopes.mm += (count * (term.aa + 2 * term.ab + term.bb)) / (spread * spread);
  slopes.ms += (count * (term.a + term.b + a * term.aa + (a + zb) * term.ab + zb * term.bb)) / spread;
  slopes.ss += count * (first + a * a * term.aa + 2 * a * zb * term.ab + zb * zb * term.bb);
}

export interface BoundedPlace {
  readonly za: number;
  readonly zb: number;
  readonly spread: number;
  readonly count: number;
}
