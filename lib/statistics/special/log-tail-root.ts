/**
 * Finds where a probability tail reaches its target, by Newton's method on the logarithm of the tail.
 * The tails it serves (gamma in log x, beta in the logit) have concave logarithms, so after one step the
 * iterates approach from one side and cannot overshoot; the cap on the step guards the first one.
 * @param start   first guess
 * @param target  the probability wanted, above 0
 * @param tail    probability at a point, and its derivative there
 */
export function logTailRoot({ start, target, tail }: LogTailProblem): number {
  let at = start;
  let cap = 64;
  for (let round = 0; round < 200; round++) {
    const { probability, slope } = tail(at);
    const useless = !(probability > 0) || slope === 0 || !Number.isFinite(slope);
    if (useless) {
      // Beyond the range of floating point: go back towards where the tail is large.
      cap /= 2;
      at = start + (at - start) / 2;
      continue;
    }
    const newton = (-Math.log(probability / target) * probability) / slope;
    const step = Math.max(-cap, Math.min(cap, newton));
    const next = at + step;
    if (Math.abs(step) <= 1e-15 * Math.max(1, Math.abs(at)) || next === at) return next;
    // Rounding makes the last digits wander: two tiny steps in a row mean that the root is reached.
    if (Math.abs(step) < 4e-15 * Math.max(1, Math.abs(at))) return next;
    at = next;
  }
  return at;
}

export interface LogTailProblem {
  readonly start: number;
  readonly target: number;
  readonly tail: (at: number) => { readonly probability: number; readonly slope: number };
}
