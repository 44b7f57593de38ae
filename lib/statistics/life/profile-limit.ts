import { normalQuantile } from "../normal";
import { alongPath, maximiseAlong, type Path, type PathPeak, type PathPoint } from "./maximise-along";
import type { Likelihood, Peak } from "./maximise-likelihood";

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
  /** How m and s move with theta while the place along the path stays; and how m's motion changes along the path. */
  readonly turn: (point: PathPoint) => { readonly m: number; readonly s: number; readonly bend: number };
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

/** With a last step taken by the parabola, heights are right to the power three halves of this. */
const ENOUGH = 1e-9;

/** How many standard errors away the search gives up: a profile that flat has no limit. */
const FARTHEST = 400;

/**
 * Newton on the signed root of the deviance, which is close to a straight line in theta, kept inside a bracket
 * that tightens with each evaluation.
 */
function profileLimit({ likelihood, peak, quantity, confidence }: ProfileProblem, side: 1 | -1): Bound {
  const target = -normalQuantile((1 - confidence) / 2);
  const { estimate, standardError, path } = quantity;
  const atPeak = { at: quantity.start, point: path(estimate)(quantity.start), slopes: peak.slopes };
  let known = { distance: 0, ...withTheta(quantity, atPeak) };
  const rootAt = (distance: number): { gap: number; rate: number } => {
    // The best place moves with theta nearly along a line, so that one or two evaluations find it again.
    const start = known.at + known.drift * side * (distance - known.distance);
    const top = maximiseAlong(likelihood, path(estimate + side * distance), start, ENOUGH);
    known = { distance, ...withTheta(quantity, top) };
    const root = Math.sqrt(Math.max(0, 2 * (peak.slopes.value - top.height)));
    return { gap: root - target, rate: (-side * known.slope) / root };
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

/** As theta moves: the slope of the profile, and the drift of the best place along the path. */
function withTheta({ turn }: ProfiledQuantity, top: Omit<PathPeak, "height">) {
  const { at, point, slopes } = top;
  const { m, s, bend: turnBend } = turn(point);
  const cross =
    (slopes.mm * m + slopes.ms * s) * point.dm + (slopes.ms * m + slopes.ss * s) * point.ds + slopes.m * turnBend;
  const { bend } = alongPath(top);
  return { at, slope: slopes.m * m + slopes.s * s, drift: bend < 0 ? -cross / bend : 0 };
}
