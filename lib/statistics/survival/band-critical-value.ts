import { normalDensity } from "../normal";

/**
 * Critical value of an equal-precision band: how many pointwise standard errors a whole stretch of curve needs.
 * @param varianceRatio  variance of log survival at the end of the stretch over that at its start; above 1
 * @param confidence     level in (0, 1) for the whole stretch
 * Source: Miller and Siegmund (1982), Biometrics 38, 1011-1016, used by Nair (1984), Technometrics 26, 265-275.
 * An approximation for large samples, cautious (too wide) for very short stretches.
 */
export function equalPrecisionCritical(varianceRatio: number, confidence: number): number {
  const outside = (c: number) => normalDensity(c) * (4 / c + (c - 1 / c) * Math.log(varianceRatio));
  return fallingRoot(outside, 1 - confidence, 1, 40);
}

/**
 * Critical value of a Hall–Wellner band: the size that a Brownian bridge exceeds anywhere on [from, to] with
 * probability 1 − confidence. 1.358 for the whole of [0, 1] at 95 %.
 * @param from, to  0 <= from < to <= 1
 * Source: Hall and Wellner (1980), Biometrika 67, 133-143; computed from the sine series of Brownian motion between two
 * barriers, so that no table has to be interpolated.
 */
export function hallWellnerCritical({
  from,
  to,
  confidence,
}: {
  from: number;
  to: number;
  confidence: number;
}): number {
  return fallingRoot((c) => 1 - bridgeStaysWithin(c, from, to), 1 - confidence, 0.05, 5);
}

/**
 * Probability that a Brownian bridge stays within ±c on [from, to]: start anywhere at `from`, keep between the
 * barriers until `to`, and still reach 0 at 1. Only the odd sine waves are symmetric and contribute.
 */
function bridgeStaysWithin(c: number, from: number, to: number): number {
  let sum = 0;
  let before = Number.POSITIVE_INFINITY;
  for (let wave = 1; wave < 4000; wave += 2) {
    const frequency = (wave * Math.PI) / (2 * c);
    const decay = Math.exp((-frequency * frequency * (to - from)) / 2);
    if (decay < 1e-18) break;
    const term = decay * cosineMass(frequency, from, c) * cosineMass(frequency, 1 - to, c);
    sum += term;
    // A short stretch hardly decays, but its masses do; two small terms in a row are no accident of the cosine.
    if (Math.abs(term) < 1e-13 * c && before < 1e-13 * c) break;
    before = Math.abs(term);
  }
  return (sum * Math.sqrt(2 * Math.PI)) / c;
}

/** Integral over (−c, c) of a normal density of this variance times cos(frequency × x), by Simpson's rule. */
function cosineMass(frequency: number, variance: number, c: number): number {
  if (variance === 0) return 1;
  const spread = Math.sqrt(variance);
  const reach = Math.min(c, 10 * spread);
  const pieces = 2 * Math.ceil(40 + 5 * frequency * reach);
  const step = reach / pieces;
  let sum = 0;
  for (let i = 0; i <= pieces; i++) {
    const x = i * step;
    const weight = i === 0 || i === pieces ? 1 : i % 2 === 1 ? 4 : 2;
    sum += weight * normalDensity(x / spread) * Math.cos(frequency * x);
  }
  return (2 * sum * step) / (3 * spread);
}

/**
 * Where a falling function reaches a level: false position, with the weight of an end that stays put halved (the Illinois
 * rule), which needs a quarter of the evaluations of plain halving.
 */
function fallingRoot(value: (x: number) => number, level: number, low: number, high: number): number {
  let [below, above] = [low, high];
  let [over, under] = [value(low) - level, value(high) - level];
  for (let i = 0; i < 200 && above - below > 1e-12 * above; i++) {
    const at = (below * under - above * over) / (under - over);
    const gap = value(at) - level;
    if (Math.abs(gap) < 1e-14) return at;
    if (gap > 0) {
      [below, over] = [at, gap];
      under /= 2;
    } else {
      [above, under] = [at, gap];
      over /= 2;
    }
  }
  return (below + above) / 2;
}
