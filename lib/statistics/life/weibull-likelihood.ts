import type { LifeSample } from "./life-sample";
import { addBounded, type BoundedTerm, type Slopes } from "./slopes";

/**
 * Weibull log-likelihood of a sample with its slopes. With z = (log age − m) / exp(s), the cumulative hazard is
 * exp(z): shape = exp(−s), scale = exp(m) in the sample's unit.
 * A failure adds its log hazard; every life adds minus the hazard it lived through, which a late entrant gets back
 * up to its entry; so the whole sample is one weighted sum of exp(z).
 */
export function weibullLikelihood(sample: LifeSample, m: number, s: number): Slopes {
  const spread = Math.exp(s);
  const inverse = 1 / spread;
  const { logAges, goneLessEntered } = sample;
  let lived = 0;
  let livedZ = 0;
  let livedZZ = 0;
  for (let i = 0; i < logAges.length; i++) {
    const weight = goneLessEntered[i] ?? 0;
    if (weight === 0) continue;
    const z = ((logAges[i] ?? 0) - m) * inverse;
    const hazard = weight * Math.exp(z);
    const hazardZ = hazard * z;
    lived += hazard;
    livedZ += hazardZ;
    livedZZ += hazardZ * z;
  }
  const { count, sum, logUnits } = sample.exact;
  const sumZ = (sum - count * m) * inverse;
  const slopes = {
    value: sumZ - count * s - sum - logUnits - lived,
    m: (lived - count) * inverse,
    s: livedZ - sumZ - count,
    mm: -lived * inverse * inverse,
    ms: (count - lived - livedZ) * inverse,
    ss: sumZ - livedZ - livedZZ,
  };
  for (const { low, high, count: lives } of sample.bounded) {
    const za = (low - m) * inverse;
    const zb = (high - m) * inverse;
    addBounded(slopes, boundedWeibull(za, zb), { za, zb, spread, count: lives });
  }
  return slopes;
}

/** exp(−A) − exp(−B) for hazards A < B, kept exact where the two are close by expm1. */
function boundedWeibull(za: number, zb: number): BoundedTerm {
  const low = Math.exp(za);
  const high = Math.exp(zb);
  const between = -Math.expm1(low - high);
  const a = low === 0 ? 0 : -low / between;
  // Beyond this the upper bound carries no weight, and Infinity / Infinity would be no number.
  const b = high - low > 700 ? 0 : high / Math.expm1(high - low);
  return {
    value: Math.log(between) - low,
    a,
    b,
    aa: a * (1 - low) - a * a,
    ab: -a * b,
    bb: b === 0 ? 0 : b * (1 - high) - b * b,
  };
}
