// Chance that can be repeated: every draw of the demo comes from a numbered stream of its own, so that one appliance's
// story does not depend on how many others are told.

export interface Random {
  /** Next 32 bits as a whole number in 0..2^32-1. */
  readonly bits: () => number;
  /** Number in [0, 1) with 53 bits. */
  readonly share: () => number;
}

/**
 * xoshiro128** 1.1 by Blackman and Vigna, from a state of four 32-bit words that are not all 0.
 * Source: the authors' public-domain reference implementation.
 * Checked: tests/synthetic-data/random.test.ts, against its outputs from state 1, 2, 3, 4.
 */
export function randomFromState(state: readonly [number, number, number, number]): Random {
  let [a, b, c, d] = state;
  if ((a | b | c | d) === 0) throw new RangeError("state: at least one word other than 0 expected");
  const bits = (): number => {
    const result = Math.imul(rotateLeft(Math.imul(b, 5), 7), 9) >>> 0;
    const shifted = b << 9;
    c ^= a;
    d ^= b;
    b ^= c;
    a ^= d;
    c ^= shifted;
    d = rotateLeft(d, 11);
    return result;
  };
  return { bits, share: () => ((bits() >>> 5) * 67_108_864 + (bits() >>> 6)) / 9_007_199_254_740_992 };
}

/** The stream named by whole numbers, such as seed, unit and purpose: the same names give the same stream. */
export function randomOf(...names: readonly number[]): Random {
  let mixed = 0x9e3779b9;
  for (const name of names)
    mixed = scramble(mixed ^ scramble((name >>> 0) ^ Math.imul(Math.floor(name / 4_294_967_296), 0x85ebca6b)));
  const word = (step: number): number => scramble((mixed + Math.imul(step, 0x9e3779b9)) >>> 0);
  return randomFromState([word(1), word(2), word(3), word(4) | 1]);
}

function rotateLeft(word: number, by: number): number {
  return (word << by) | (word >>> (32 - by));
}

/** Mixes every input bit into every output bit; a one-to-one map of 32-bit words. */
function scramble(word: number): number {
  let mixed = Math.imul(word ^ (word >>> 16), 0x21f0aaad);
  mixed = Math.imul(mixed ^ (mixed >>> 15), 0x735a2d97);
  return (mixed ^ (mixed >>> 15)) >>> 0;
}
