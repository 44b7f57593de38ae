import { poissonAtLeast, poissonAtMost } from "../discrete/poisson";
import { requireWholeNumber } from "../require";

/** What a stock level leaves over and leaves short, on average, against a Poisson demand. */
export interface StockLoss {
  readonly shortage: number;
  readonly leftover: number;
}

/**
 * Expected shortage E(D − S)⁺ and expected leftover E(S − D)⁺ for a Poisson demand D. A level below zero (orders
 * already owed) is all shortage.
 * @param level whole number, may be negative
 * @param mean  of the demand, 0 or more
 * @throws RangeError for an argument outside its range
 * Source: Hadley & Whitin (1963), Analysis of Inventory Systems, appendix 3.
 * Checked: tests/statistics/stock.test.ts, by summing the definition.
 */
export function poissonLoss(level: number, mean: number): StockLoss {
  if (level <= 0) {
    requireWholeNumber("−level", -level);
    return { shortage: mean - level, leftover: 0 };
  }
  requireWholeNumber("level", level);
  const shortage = mean * poissonAtLeast(level, mean) - level * poissonAtLeast(level + 1, mean);
  const leftover = level * poissonAtMost(level, mean) - mean * poissonAtMost(level - 1, mean);
  return { shortage: Math.max(0, shortage), leftover: Math.max(0, leftover) };
}
