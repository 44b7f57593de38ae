import type { Slopes } from "./slopes";

/** A log-likelihood as a function of location m and log spread s. */
export type Likelihood = (m: number, s: number) => Slopes;

export interface Peak {
  readonly m: number;
  readonly s: number;
  readonly slopes: Slopes;
}

export type PeakOrFlat = ({ readonly kind: "peak" } & Peak) | { readonly kind: "flat-likelihood" };

const MOST_STEPS = 200;
/** Beyond these the spread of log age is a spike or boundless: the likelihood rises for ever and has no peak. */
const SMALLEST_LOG_SPREAD = -11.5;
const LARGEST_LOG_SPREAD = 6;
/** Gap below which the height no longer tells better from worse, and Newton steps are taken unasked. */
const NEARLY_THERE = 1e-9;
/** Gap below which one that grows is rounding; above it, it is a ridge on which Newton still runs. */
const ROUNDING = 1e-14;

/**
 * Highest point of a likelihood over m and s by Newton steps, damped where the surface is not yet a bowl and cut
 * back where a step would go down.
 * @returns the peak; `flat-likelihood` when it climbs without end, or is a ridge: two directions cannot be told apart
 * A peak is accepted on its slope, not on the last gain: late-entry surfaces are so flat that gains vanish
 * long before the parameters settle.
 */
export function maximiseLikelihood(likelihood: Likelihood, start: { m: number; s: number }): PeakOrFlat {
  let at: Peak = { ...start, slopes: likelihood(start.m, start.s) };
  let bestGap = Number.POSITIVE_INFINITY;
  for (let step = 0; step < MOST_STEPS; step++) {
    const move = newtonMove(at.slopes, Math.exp(at.s));
    // Twice the rise that the parabola still promises: a squared distance in standard errors.
    const gap = move.m * at.slopes.m + move.s * at.slopes.s;
    if (move.undamped && gap < NEARLY_THERE) {
      if (gap < 1e-22 || (gap >= bestGap && gap < ROUNDING)) {
        return isRidge(at.slopes, Math.exp(at.s)) ? { kind: "flat-likelihood" } : { kind: "peak", ...at };
      }
      bestGap = gap;
      at = evaluate(likelihood, at.m + move.m, at.s + move.s);
      if (!(at.s > SMALLEST_LOG_SPREAD && at.s < LARGEST_LOG_SPREAD)) return { kind: "flat-likelihood" };
      continue;
    }
    const next = climb(likelihood, at, move);
    if (next === undefined || next.s < SMALLEST_LOG_SPREAD || next.s > LARGEST_LOG_SPREAD)
      return { kind: "flat-likelihood" };
    at = next;
  }
  return { kind: "flat-likelihood" };
}

function evaluate(likelihood: Likelihood, m: number, s: number): Peak {
  return { m, s, slopes: likelihood(m, s) };
}

/** Solves (−Hessian + damping) move = slope, with just enough damping to make the matrix positive; caps the move. */
function newtonMove(slopes: Slopes, spread: number): { m: number; s: number; undamped: boolean } {
  // Work in units of the spread, so that both directions are comparable.
  const mm = -slopes.mm * spread * spread;
  const ms = -slopes.ms * spread;
  const ss = -slopes.ss;
  const half = (mm + ss) / 2;
  const smallest = half - Math.hypot((mm - ss) / 2, ms);
  const largest = Math.abs(half) + Math.hypot((mm - ss) / 2, ms);
  const undamped = smallest > 1e-13 * largest;
  const damping = undamped ? 0 : 1e-3 * largest - smallest;
  const [a, c] = [mm + damping, ss + damping];
  const determinant = a * c - ms * ms;
  const m = (c * slopes.m * spread - ms * slopes.s) / determinant;
  const s = (a * slopes.s - ms * slopes.m * spread) / determinant;
  const cut = Math.min(1, 3 / Math.abs(m), 1 / Math.abs(s));
  return { m: m * cut * spread, s: s * cut, undamped: undamped && cut === 1 };
}

/** Takes the move, or the largest half, quarter… of it that goes up. */
function climb(likelihood: Likelihood, from: Peak, move: { m: number; s: number }): Peak | undefined {
  for (let cut = 1; cut > 1e-12; cut /= 2) {
    const next = evaluate(likelihood, from.m + cut * move.m, from.s + cut * move.s);
    if (next.slopes.value > from.slopes.value) return next;
  }
  return undefined;
}

/**
 * The two parameters so correlated that the data fix only a combination of them, or a plateau that fixes neither:
 * a real failure tells about one unit of information on the log spread, a plateau next to none.
 */
function isRidge({ mm, ms, ss }: Slopes, spread: number): boolean {
  return 1 - (ms * ms) / (mm * ss) < 1e-7 || Math.min(-mm * spread * spread, -ss) < 1e-6;
}
