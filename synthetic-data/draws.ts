import type { Random } from "./random";

/** Life with cumulative hazard (t / scale)^shape, in the unit of scale. */
export function drawWeibull(
  random: Random,
  { shape, scale }: { readonly shape: number; readonly scale: number },
): number {
  return scale * (-Math.log(1 - random.share())) ** (1 / shape);
}

/** Waiting time with a constant rate above 0. */
export function drawWait(random: Random, rate: number): number {
  return -Math.log(1 - random.share()) / rate;
}

export function happens(random: Random, chance: number): boolean {
  return random.share() < chance;
}

/** Whole number from `from` to `to`, both included. */
export function drawWhole(random: Random, from: number, to: number): number {
  return from + Math.floor(random.share() * (to - from + 1));
}

/** One entry, each as likely as the next. @throws RangeError where there is none */
export function pickOne<T>(random: Random, entries: readonly T[]): T {
  const entry = entries[Math.floor(random.share() * entries.length)];
  if (entry === undefined) throw new RangeError("entries: at least one expected");
  return entry;
}

/** Position of one weight, as likely as its share of the sum. Weights are 0 or more and not all 0. */
export function pickWeighted(random: Random, weights: readonly number[]): number {
  let rest = random.share() * weights.reduce((sum, weight) => sum + weight, 0);
  for (const [position, weight] of weights.entries()) {
    rest -= weight;
    if (rest < 0 && weight > 0) return position;
  }
  return weights.findLastIndex((weight) => weight > 0);
}
