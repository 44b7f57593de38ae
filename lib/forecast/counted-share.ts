import type { SeededDraws } from "@/lib/statistics/demand/seeded-draws";

/**
 * A share known from counts: so many of so many; its doubt is that of a beta with half of each added (Jeffreys).
 * Of an infinite number it is certain: 1.
 */
export interface CountedShare {
  readonly of: number;
  readonly counted: number;
}

export function drawShare({ of, counted }: CountedShare, draws: SeededDraws): number {
  if (counted === of && of === Number.POSITIVE_INFINITY) return 1;
  const yes = draws.gamma(counted + 0.5);
  return yes / (yes + draws.gamma(of - counted + 0.5));
}

/** @throws RangeError for fewer than none, or more than all */
export function requireShare(name: string, { of, counted }: CountedShare): void {
  if (!(counted >= 0 && counted <= of)) throw new RangeError(`${name}.counted must lie in 0..${of}; it is ${counted}`);
}
