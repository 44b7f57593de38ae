import type { LocationScaleFit } from "./fit-location-scale";
import type { Path } from "./maximise-along";
import type { ProfiledQuantity } from "./profile-limit";

/** Log age at a standard z (0: the location itself), relative to the sample's unit. */
export function logAgeAt({ peak, covariance, spreadFixed }: LocationScaleFit, z: number): ProfiledQuantity {
  const spread = Math.exp(peak.s);
  const { mm, ms, ss } = covariance;
  return {
    estimate: peak.m + z * spread,
    standardError: Math.sqrt(mm + 2 * z * spread * ms + (z * spread) ** 2 * ss),
    path: (theta) => (spreadFixed ? standingAt(theta - z * spread, peak.s) : alongSpread(theta, -z)),
    start: peak.s,
    turn: () => ({ m: 1, s: 0, bend: 0 }),
  };
}

/** Log of the spread; the Weibull shape is one over the spread. */
export function logSpread({ peak, covariance }: LocationScaleFit): ProfiledQuantity {
  return {
    estimate: peak.s,
    standardError: Math.sqrt(covariance.ss),
    path: (theta) => (m) => ({ m, s: theta, dm: 1, ds: 0, ddm: 0 }),
    start: peak.m,
    turn: () => ({ m: 0, s: 1, bend: 0 }),
  };
}

/** The standard z that a relative log age reaches: its probability is the chance of having failed by that age. */
export function standardAge({ peak, covariance, spreadFixed }: LocationScaleFit, logAge: number): ProfiledQuantity {
  const spread = Math.exp(peak.s);
  const z = (logAge - peak.m) / spread;
  const { mm, ms, ss } = covariance;
  return {
    estimate: z,
    standardError: Math.sqrt(mm / (spread * spread) + (2 * z * ms) / spread + z * z * ss),
    path: (theta) => (spreadFixed ? standingAt(logAge - theta * spread, peak.s) : alongSpread(logAge, -theta)),
    start: peak.s,
    turn: ({ s }) => ({ m: -Math.exp(s), s: 0, bend: spreadFixed ? 0 : -Math.exp(s) }),
  };
}

/** All (m, s) with m = level + z exp(s): the lives that share one age at a standard z. */
function alongSpread(level: number, z: number): Path {
  return (s) => {
    const lean = z * Math.exp(s);
    return { m: level + lean, s, dm: lean, ds: 1, ddm: lean };
  };
}

/** With a fixed spread one value of theta leaves a single point. */
function standingAt(m: number, s: number): Path {
  return () => ({ m, s, dm: 0, ds: 0, ddm: 0 });
}
