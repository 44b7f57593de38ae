import type { Likelihood } from "./maximise-likelihood";
import type { Slopes } from "./slopes";

/** A curve through the (m, s) plane: the point at `at`, and how m and s move there (s never bends). */
export interface PathPoint {
  readonly m: number;
  readonly s: number;
  readonly dm: number;
  readonly ds: number;
  /** Second derivative of m along the path. */
  readonly ddm: number;
}

export type Path = (at: number) => PathPoint;

export interface PathPeak {
  readonly at: number;
  readonly point: PathPoint;
  readonly slopes: Slopes;
}

/** Spreads beyond exp(±50) overflow the likelihood; no peak lies there. */
const FARTHEST_LOG_SPREAD = 50;
const OUT_OF_REACH: Slopes = { value: Number.NEGATIVE_INFINITY, m: 0, s: 0, mm: 0, ms: 0, ss: 0 };

/** Highest point of a likelihood along one path, from a start near it, by Newton steps cut back where they go down. */
export function maximiseAlong(likelihood: Likelihood, path: Path, start: number): PathPeak {
  const evaluate = (at: number): PathPeak => {
    const point = path(at);
    const reachable = Math.abs(point.s) < FARTHEST_LOG_SPREAD && Number.isFinite(point.m);
    return { at, point, slopes: reachable ? likelihood(point.m, point.s) : OUT_OF_REACH };
  };
  let best = evaluate(start);
  for (let step = 0; step < 100; step++) {
    const { point, slopes } = best;
    const slope = slopes.m * point.dm + slopes.s * point.ds;
    if (slope === 0) return best;
    const bend =
      slopes.mm * point.dm ** 2 +
      2 * slopes.ms * point.dm * point.ds +
      slopes.ss * point.ds ** 2 +
      slopes.m * point.ddm;
    const move = Math.max(-1, Math.min(1, bend < 0 ? -slope / bend : Math.sign(slope)));
    // The profile is stationary here: an error of ε in the path costs only ε² in its height.
    if (bend < 0 && move * slope < 1e-13) return best;
    const next = uphill(evaluate, best, move);
    if (next === undefined) return best;
    best = next;
  }
  return best;
}

function uphill(evaluate: (at: number) => PathPeak, from: PathPeak, move: number): PathPeak | undefined {
  for (let cut = 1; cut > 1e-9; cut /= 2) {
    const next = evaluate(from.at + cut * move);
    if (next.slopes.value > from.slopes.value) return next;
  }
  return undefined;
}
