import { requireWholeNumber } from "../require";

/** Chance for simulations; the same seed always gives the same numbers. */
export interface SeededDraws {
  /** In (0, 1), never an end. */
  readonly uniform: () => number;
  readonly normal: () => number;
  /** Gamma with rate 1; shape above 0. */
  readonly gamma: (shape: number) => number;
  readonly poisson: (mean: number) => number;
  readonly binomial: (trials: number, chance: number) => number;
}

/**
 * Draws from the common distributions, each by a method that is exact for all parameters.
 * Source: uniform by a counter mixed as in Steele, Lea & Flood (2014), OOPSLA, with 32-bit constants; normal by Box &
 *   Muller (1958); gamma by Marsaglia & Tsang (2000), ACM TOMS 26, 363-372; Poisson and binomial by waiting times and,
 *   where large, by splitting at a gamma or beta order statistic (Ahrens & Dieter 1974, Computing 12, 223-246).
 * Checked: tests/statistics/demand/seeded-draws.test.ts, against the distributions in `discrete`.
 */
export function seededDraws(seed: number): SeededDraws {
  requireWholeNumber("seed", seed);
  let state = (seed ^ Math.floor(seed / 2 ** 32)) >>> 0;
  const uniform = () => {
    state = (state + 0x9e3779b9) >>> 0;
    let mixed = Math.imul(state ^ (state >>> 16), 0x21f0aaad);
    mixed = Math.imul(mixed ^ (mixed >>> 15), 0x735a2d97);
    return ((mixed ^ (mixed >>> 15)) >>> 0) / 2 ** 32 + 2 ** -33;
  };
  const normal = () => Math.sqrt(-2 * Math.log(uniform())) * Math.cos(2 * Math.PI * uniform());
  const gamma = (shape: number): number => gammaDraw({ uniform, normal }, shape);
  return {
    uniform,
    normal,
    gamma,
    poisson: (mean) => poissonDraw({ uniform, gamma }, mean),
    binomial: (trials, chance) => binomialDraw({ uniform, gamma }, trials, chance),
  };
}

/** The seed of another stream: what is drawn from it is independent of what the seed itself gives. */
export function streamSeed(seed: number, stream: number): number {
  requireWholeNumber("stream", stream);
  const draws = seededDraws(seed);
  let mixed = Math.floor(draws.uniform() * 2 ** 32) ^ Math.imul(stream + 1, 0x85ebca6b);
  mixed = Math.imul(mixed ^ (mixed >>> 16), 0x21f0aaad);
  return (mixed ^ (mixed >>> 15)) >>> 0;
}

function gammaDraw({ uniform, normal }: Pick<SeededDraws, "uniform" | "normal">, shape: number): number {
  // A shape below 1 is one higher, times a power of a uniform.
  if (shape < 1) return gammaDraw({ uniform, normal }, shape + 1) * uniform() ** (1 / shape);
  const d = shape - 1 / 3;
  const c = 1 / Math.sqrt(9 * d);
  for (;;) {
    const z = normal();
    const v = (1 + c * z) ** 3;
    if (v > 0 && Math.log(uniform()) < z * z * 0.5 + d - d * v + d * Math.log(v)) return d * v;
  }
}

type Waits = Pick<SeededDraws, "uniform" | "gamma">;

function poissonDraw({ uniform, gamma }: Waits, mean: number): number {
  let left = mean;
  let count = 0;
  while (left > 12) {
    // The time of the event in the middle: before it all but one are counted, or the count ends inside.
    const events = Math.floor(left * 0.875);
    const time = gamma(events);
    if (time > left) return count + binomialDraw({ uniform, gamma }, events - 1, left / time);
    count += events;
    left -= time;
  }
  const limit = Math.exp(-left);
  for (let product = uniform(); product > limit; product *= uniform()) count += 1;
  return count;
}

function binomialDraw({ uniform, gamma }: Waits, trials: number, chance: number): number {
  let [n, p, count] = [trials, chance, 0];
  while (n * p > 12 && n > 24 && p > 0 && p < 1) {
    // The middle one of n uniforms is beta; only one side of it still has to be counted.
    const middle = Math.floor(n / 2) + 1;
    const first = gamma(middle);
    const at = first / (first + gamma(n - middle + 1));
    if (at <= p) {
      count += middle;
      n -= middle;
      p = (p - at) / (1 - at);
    } else {
      n = middle - 1;
      p /= at;
    }
  }
  return count + bySkipping(uniform, n, p);
}

/** The trials between two successes are geometric: the failures in between need not be tried one by one. */
function bySkipping(uniform: () => number, trials: number, chance: number): number {
  if (chance <= 0) return 0;
  if (chance >= 1) return trials;
  const perTrial = Math.log1p(-chance);
  let count = 0;
  for (let at = Math.floor(Math.log(uniform()) / perTrial); at < trials; count++) {
    at += 1 + Math.floor(Math.log(uniform()) / perTrial);
  }
  return count;
}
