import type { LocationScaleFit } from "./fit-location-scale";
import type { ProfiledQuantity } from "./profile-limit";

/** Log age at a standard z (0: the location itself), relative to the sample's unit. */
export function logAgeAt(fit: LocationScaleFit, z: number): ProfiledQuantity {
  const { peak, covariance } = fit;
  const spread = Math.exp(peak.s);
  const { mm, ms, ss } = covariance;
  return {
    estimate: peak.m + z * spread,
    standardError: Math.sqrt(mm + 2 * z * spread * ms + (z * spread) ** 2 * ss),
    path: (theta) => (s) => {
      const bend = -z * Math.exp(s);
      return { m: theta + bend, s, dm: bend, ds: 1, ddm: bend };
    },
    start: peak.s,
    slope: (slopes) => slopes.m,
  };
}

/** Log of the spread; the Weibull shape is one over the spread. */
export function logSpread({ peak, covariance }: LocationScaleFit): ProfiledQuantity {
  return {
    estimate: peak.s,
    standardError: Math.sqrt(covariance.ss),
    path: (theta) => (m) => ({ m, s: theta, dm: 1, ds: 0, ddm: 0 }),
    start: peak.m,
    slope: (slopes) => slopes.s,
  };
}

/** The standard z that a relative log age reaches: its probability is the chance of having failed by that age. */
export function standardAge({ peak, covariance }: LocationScaleFit, logAge: number): ProfiledQuantity {
  const spread = Math.exp(peak.s);
  const z = (logAge - peak.m) / spread;
  const { mm, ms, ss } = covariance;
  return {
    estimate: z,
    standardError: Math.sqrt(mm / (spread * spread) + (2 * z * ms) / spread + z * z * ss),
    path: (theta) => (s) => {
      const bend = -theta * Math.exp(s);
      return { m: logAge + bend, s, dm: bend, ds: 1, ddm: bend };
    },
    start: peak.s,
    slope: (slopes, point) => -Math.exp(point.s) * slopes.m,
  };
}
