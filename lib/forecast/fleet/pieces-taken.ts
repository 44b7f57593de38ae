import type { SeededDraws } from "@/lib/statistics/demand/seeded-draws";
import { requireWholeNumber } from "@/lib/statistics/require";

/** How many repairs took 1, 2, 3 … pieces of a part. */
export class PiecesTaken {
  /** Pieces that a repair takes which takes any, on average. */
  readonly mean: number;
  /** Chance of each number of pieces. */
  readonly shares: readonly { readonly each: number; readonly chance: number }[];

  /** @param repairs by pieces, those that took one first; none at all are taken as one piece each */
  constructor(repairs: readonly number[]) {
    for (const [i, count] of repairs.entries()) requireWholeNumber(`repairs[${i}]`, count);
    const total = repairs.reduce((sum, count) => sum + count, 0);
    const counted = total === 0 ? [1] : repairs;
    this.shares = counted.flatMap((count, i) =>
      count > 0 ? [{ each: i + 1, chance: count / Math.max(1, total) }] : [],
    );
    this.mean = this.shares.reduce((sum, { each, chance }) => sum + each * chance, 0);
  }

  /** Pieces that so many repairs take together. */
  draw(repairs: number, draws: SeededDraws): number {
    let left = repairs;
    let [sum, rest] = [0, 1];
    for (const { each, chance } of this.shares) {
      if (left === 0) break;
      const some = chance >= rest ? left : draws.binomial(left, chance / rest);
      sum += some * each;
      left -= some;
      rest -= chance;
    }
    return sum;
  }
}
