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
  /** Height of the top of the parabola at hand: nearer to that of the peak than the last height, and free. */
  readonly height: number;
}

/** Below this the height no longer tells better from worse: Newton steps are taken unasked while they promise less and less. */
const NEARLY_THERE = 1e-9;
/** Spreads beyond exp(±50) overflow the likelihood; no peak lies there. */
const FARTHEST_LOG_SPREAD = 50;
const OUT_OF_REACH: Slopes = { value: Number.NEGATIVE_INFINITY, m: 0, s: 0, mm: 0, ms: 0, ss: 0 };

/**
 * Highest point of a likelihood along one path, from a start near it, by Newton steps cut back where they go down.
 * @param enough  a rise that is not worth another evaluation: the search ends where the parabola at hand promises less
 */
export function maximiseAlong(likelihood: Likelihood, path: Path, start: number, enough: number): PathPeak {
  const evaluate = (at: number): Place => {
    const point = path(at);
    const reachable = Math.abs(point.s) < FARTHEST_LOG_SPREAD && Number.isFinite(point.m);
    return { at, point, slopes: reachable ? likelihood(point.m, point.s) : OUT_OF_REACH };
  };
  let best = evaluate(start);
  let leastPromise = NEARLY_THERE;
  for (let step = 0; step < 100; step++) {
    const { slope, bend } = alongPath(best);
    if (slope === 0) return { ...best, height: best.slopes.value };
    const move = Math.max(-1, Math.min(1, bend < 0 ? -slope / bend : Math.sign(slope)));
    // The profile is stationary here: an error of ε in the path costs only ε² in its height.
    const promise = bend < 0 ? move * slope : Number.POSITIVE_INFINITY;
    if (promise < enough) return { ...best, height: best.slopes.value + promise / 2 };
    if (promise < NEARLY_THERE && promise >= leastPromise) return { ...best, height: best.slopes.value };
    leastPromise = Math.min(promise, leastPromise);
    const next = promise < NEARLY_THERE ? evaluate(best.at + move) : uphill(evaluate, best, move);
    if (next === undefined) return { ...best, height: best.slopes.value };
    best = next;
  }
  return { ...best, height: best.slopes.value };
}

type Place = Omit<PathPeak, "height">;

/** First and second derivative of the likelihood along the path. */
export function alongPath({ point, slopes }: Place): { readonly slope: number; readonly bend: number } {
  const { dm, ds, ddm } = point;
  return {
    slope: slopes.m * dm + slopes.s * ds,
    bend: slopes.mm * dm ** 2 + 2 * slopes.ms * dm * ds + slopes.ss * ds ** 2 + slopes.m * ddm,
  };
}

function uphill(evaluate: (at: number) => Place, from: Place, move: number): Place | undefined {
  for (let cut = 1; cut > 1e-9; cut /= 2) {
    const next = evaluate(from.at + cut * move);
    if (next.slopes.value > from.slopes.value) return next;
  }
  return undefined;
}
