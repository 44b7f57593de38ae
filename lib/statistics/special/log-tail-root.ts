/**
 * Finds where a probability tail reaches its target, by Newton's method on the logarithm of the tail.
 * The tails it serves (gamma in log x, beta in the logit) have concave logarithms, so after one step the
 * iterates approach from one side and cannot overshoot; only the first step can, and is halved until it does not
 * leave the range of floating point.
 * @param start   first guess
 * @param target  the probability wanted, above 0
 * @param grows   which way the tail grows: 1 for a lower tail, -1 for an upper one
 * @param tail    probability at a point, and its derivative there
 */
export function logTailRoot({ start, target, grows, tail }: LogTailProblem): number {
  let at = start;
  let usable: number | undefined;
  let stride = 1;
  for (let round = 0; round < 500; round++) {
    const { probability, slope } = tail(at);
    if (!(probability > 0) || slope === 0 || !Number.isFinite(slope)) {
      // The tail has sunk to nothing here: back half-way to where it had not, or on to where it is larger.
      at = usable === undefined ? at + grows * stride : (usable + at) / 2;
      stride *= 2;
      continue;
    }
    usable = at;
    const next = at - (Math.log(probability / target) * probability) / slope;
    // Rounding makes the last digits wander, so a step of that size means that the root is reached.
    if (Math.abs(next - at) <= 4e-15 * Math.max(1, Math.abs(at))) return next;
    at = next;
  }
  return at;
}

export interface LogTailProblem {
  readonly start: number;
  readonly target: number;
  readonly grows: 1 | -1;
  readonly tail: (at: number) => { readonly probability: number; readonly slope: number };
}
