/**
 * Finds where a probability tail reaches its target, by Newton's method on the logarithm of the tail, kept inside
 * what is already known to lie on either side of the root.
 * The tails it serves (gamma in log x, beta in the logit) have concave logarithms, on which Newton's method closes in
 * from one side; the bounds guard the first steps, where a tail may have sunk to nothing or have no slope left.
 * @param start   first guess
 * @param target  the probability wanted, above 0
 * @param grows   which way the tail grows: 1 for a lower tail, -1 for an upper one
 * @param tail    probability at a point, and its derivative there
 */
export function logTailRoot({ start, target, grows, tail }: LogTailProblem): number {
  let at = start;
  let tooLittle: number | undefined;
  let tooMuch: number | undefined;
  let stride = 0.25;
  for (let round = 0; round < 300; round++) {
    const { probability, slope } = tail(at);
    if (probability < target) tooLittle = at;
    else tooMuch = at;
    const newton = at - (Math.log(probability / target) * probability) / slope;
    // Rounding makes the last digits wander, so a step of that size means that the root is reached.
    if (Math.abs(newton - at) <= 4e-15 * Math.max(1, Math.abs(at))) return newton;
    const next = isBetween(newton, tooLittle, tooMuch, grows) ? newton : fallback();
    if (next === at) return at;
    at = next;
  }
  return at;

  /** Half-way between the two sides, or further out by growing strides while one side is unknown. */
  function fallback(): number {
    if (tooLittle !== undefined && tooMuch !== undefined) return (tooLittle + tooMuch) / 2;
    stride *= 2;
    return tooLittle === undefined ? at - grows * stride : at + grows * stride;
  }
}

export interface LogTailProblem {
  readonly start: number;
  readonly target: number;
  readonly grows: 1 | -1;
  readonly tail: (at: number) => { readonly probability: number; readonly slope: number };
}

function isBetween(at: number, tooLittle: number | undefined, tooMuch: number | undefined, grows: 1 | -1): boolean {
  if (!Number.isFinite(at)) return false;
  const aboveLittle = tooLittle === undefined || grows * (at - tooLittle) > 0;
  return aboveLittle && (tooMuch === undefined || grows * (tooMuch - at) > 0);
}
