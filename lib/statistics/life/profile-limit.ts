import { normalQuantile } from "../normal";
import { maximiseAlong, type Path } from "./maximise-along";
import type { Likelihood, Peak } from "./maximise-likelihood";
import type { Slopes } from "./slopes";

/**
 * One quantity of interest, theta, on a scale without bounds (a logarithm, a z value).
 * `path` is the curve of all (m, s) that share one value of theta.
 */
export interface ProfiledQuantity {
  /** Theta at the peak of the likelihood, and its standard error there. */
  readonly estimate: number;
  readonly standardError: number;
  readonly path: (theta: number) => Path;
  /** Where along the path the peak lies. */
  readonly start: number;
  /** Slope of the likelihood as theta moves and the place along the path stays: the slope of the profile. */
  readonly slope: (slopes: Slopes, point: { readonly m: number; readonly s: number }) => number;
}

/** An interval end; `unbounded` when the data cannot exclude values on that side, however far. */
export type Bound = number | "unbounded";

/**
 * Likelihood-ratio limits of theta: where the best log-likelihood with theta held fixed has dropped by half the
 * chi-square quantile. Not symmetric, never outside the possible values, and right where few failures make the Wald limits wrong.
 * Source: Meeker and Escobar (1998), Statistical Methods for Reliability Data, section 8.3.
 */
export function profileLimits(problem: ProfileProblem): { readonly low: Bound; readonly high: Bound } {
  return { low: profileLimit(problem, -1), high: profileLimit(problem, 1) };
}

export interface ProfileProblem {
  readonly likelihood: Likelihood;
  readonly peak: Peak;
  readonly quantity: ProfiledQuantity;
  readonly confidence: number;
}

/** How many standard errors away the search gives up: a profile that flat has no limit. */
const FARTHEST = 400;

/**
 * Newton on the signed root of the deviance, which is close to a straight line in theta, kept inside a bracket
 * that tightens with each evaluation.
 */
function profileLimit({ likelihood, peak, quantity, confidence }: ProfileProblem, side: 1 | -1): Bound {
  const target = -normalQuantile((1 - confidence) / 2);
  const { estimate, standardError, path, slope } = quantity;
  let place = quantity.start;
  const rootAt = (distance: number): { gap: number; rate: number } => {
    const top = maximiseAlong(likelihood, path(estimate + side * distance), place);
    place = top.at;
    const root = Math.sqrt(Math.max(0, 2 * (peak.slopes.value - top.slopes.value)));
    return { gap: root - target, rate: (-side * slope(top.slopes, top.point)) / root };
  };
  let below = 0;
  let above = Number.POSITIVE_INFINITY;
  let distance = target * standardError;
  for (let step = 0; step < 100; step++) {
    const { gap, rate } = rootAt(distance);
    if (Math.abs(gap) < 1e-10) return estimate + side * distance;
    if (gap < 0) below = distance;
    else above = distance;
    if (below > FARTHEST * standardError) return "unbounded";
    if (above - below < 1e-13 * (above + Math.abs(estimate))) return estimate + side * distance;
    const newton = distance - gap / rate;
    const farthest = above === Number.POSITIVE_INFINITY ? below + 3 * Math.max(below, target * standardError) : above;
    distance =
      newton > below && newton < farthest
        ? newton
        : newton >= farthest && above === Number.POSITIVE_INFINITY
          ? farthest
          : (below + farthest) / 2;
  }
  return estimate + side * distance;
}
