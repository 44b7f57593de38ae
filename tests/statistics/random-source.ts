/** Seeded random numbers for simulations in tests; the same seed always gives the same numbers. */
export interface RandomSource {
  readonly uniform: () => number;
  readonly poisson: (mean: number) => number;
  readonly binomial: (trials: number, chance: number) => number;
  /** Shape a whole number, rate 1: a sum of exponential waits. */
  readonly gamma: (shape: number) => number;
}

/** SplitMix32-style mixing of a counter: every output depends on all bits of seed and position. */
export function randomSource(seed: number): RandomSource {
  let state = seed >>> 0;
  const uniform = () => {
    state = (state + 0x9e3779b9) >>> 0;
    let mixed = state;
    mixed = Math.imul(mixed ^ (mixed >>> 16), 0x21f0aaad);
    mixed = Math.imul(mixed ^ (mixed >>> 15), 0x735a2d97);
    return ((mixed ^ (mixed >>> 15)) >>> 0) / 2 ** 32 + 2 ** -33;
  };
  const poisson = (mean: number): number => {
    // Large means are halved, so that exp(−mean) stays away from zero: a sum of Poisson counts is Poisson.
    if (mean > 20) return poisson(mean / 2) + poisson(mean / 2);
    const limit = Math.exp(-mean);
    let count = -1;
    let product = 1;
    do {
      product *= uniform();
      count += 1;
    } while (product > limit);
    return count;
  };
  const binomial = (trials: number, chance: number) => {
    let count = 0;
    for (let i = 0; i < trials; i++) if (uniform() < chance) count += 1;
    return count;
  };
  const gamma = (shape: number) => {
    let sum = 0;
    for (let i = 0; i < shape; i++) sum -= Math.log(uniform());
    return sum;
  };
  return { uniform, poisson, binomial, gamma };
}
