/**
 * Smallest whole number, 0 or more, from which on a condition holds. The condition must be false below some point
 * and true from there; the search widens from the guess and then halves.
 */
export function smallestReaching({ guess, step, reached }: SmallestReaching): number {
  let high = Math.max(0, Math.floor(guess));
  let width = Math.max(1, Math.ceil(step));
  while (!reached(high)) {
    if (high > 2 ** 52) throw new RangeError("reached must hold for some whole number below 2^52");
    high += width;
    width *= 2;
  }
  let low = high;
  width = Math.max(1, Math.ceil(step));
  while (low >= 0 && reached(low)) {
    high = low;
    low -= width;
    width *= 2;
  }
  low = Math.max(low, -1);
  while (high - low > 1) {
    const middle = Math.floor((low + high) / 2);
    if (reached(middle)) high = middle;
    else low = middle;
  }
  return high;
}

export interface SmallestReaching {
  readonly guess: number;
  readonly step: number;
  readonly reached: (count: number) => boolean;
}
