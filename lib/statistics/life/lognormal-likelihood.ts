import type { LifeSample } from "./life-sample";
import { logNormalDensity, normalTail } from "./normal-tail";
import { addBounded, type BoundedTerm, type Slopes } from "./slopes";

/**
 * Lognormal log-likelihood of a sample with its slopes: log age is normal with mean m (relative to the sample's
 * unit) and standard deviation exp(s). A late entrant's chance of having been sound at entry is divided out.
 */
export function lognormalLikelihood(sample: LifeSample, m: number, s: number): Slopes {
  const spread = Math.exp(s);
  const inverse = 1 / spread;
  const slopes = exactFailures(sample, m, s);
  const { logAges, lostLessEntered } = sample;
  for (let i = 0; i < logAges.length; i++) {
    const weight = lostLessEntered[i] ?? 0;
    if (weight === 0) continue;
    const z = ((logAges[i] ?? 0) - m) * inverse;
    const { log, hazard } = normalTail(z);
    const bend = hazard * (hazard - z);
    slopes.value += weight * log;
    slopes.m += weight * hazard * inverse;
    slopes.s += weight * z * hazard;
    slopes.mm -= weight * bend * inverse * inverse;
    slopes.ms -= weight * (hazard + z * bend) * inverse;
    slopes.ss -= weight * (z * hazard + z * z * bend);
  }
  for (const { low, high, count } of sample.bounded) {
    const za = (low - m) * inverse;
    const zb = (high - m) * inverse;
    addBounded(slopes, boundedNormal(za, zb), { za, zb, spread, count });
  }
  return slopes;
}

/** Exact failures enter only by their count, Σ y and Σ y². */
function exactFailures({ exact }: LifeSample, m: number, s: number): Slopes {
  const { count, sum, squares, logUnits } = exact;
  const inverse = Math.exp(-s);
  const sumZ = (sum - count * m) * inverse;
  const sumZZ = (squares - 2 * m * sum + count * m * m) * inverse * inverse;
  return {
    value: count * logNormalDensity(0) - sumZZ / 2 - count * s - sum - logUnits,
    m: sumZ * inverse,
    s: sumZZ - count,
    mm: -count * inverse * inverse,
    ms: -2 * sumZ * inverse,
    ss: -2 * sumZZ,
  };
}

/** Taken from whichever tail is the smaller, so that two bounds far out do not cancel. */
function boundedNormal(za: number, zb: number): BoundedTerm {
  const upper = za + zb > 0;
  const near = normalTail(upper ? za : -zb).log;
  const far = normalTail(upper ? zb : -za).log;
  const value = near + Math.log(-Math.expm1(far - near));
  const leftOpen = za === Number.NEGATIVE_INFINITY;
  const a = leftOpen ? 0 : -Math.exp(logNormalDensity(za) - value);
  const b = Math.exp(logNormalDensity(zb) - value);
  return {
    value,
    a,
    b,
    aa: leftOpen ? 0 : -a * za - a * a,
    ab: -a * b,
    bb: -b * zb - b * b,
  };
}
