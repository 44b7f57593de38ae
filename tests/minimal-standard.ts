/** Numbers between 0 and 1, the same on every run. Source: Park, Miller & Stockmeyer (1993), CACM 36 (7), 108-110: multiplier 48271. */
export function minimalStandard(seed: number): () => number {
  let state = seed;
  return () => {
    state = (state * 48271) % 2147483647;
    return state / 2147483647;
  };
}
