import { poissonAtMost } from "../discrete/poisson";
import { requirePositive, requireWholeNumber } from "../require";
import { poissonLoss } from "./poisson-loss";

/**
 * Measures of one-for-one replenishment: each unit used is ordered at once, so stock on hand plus on order always
 * stands at `level` (one more than the reorder point).
 * @param level          whole number, 0 or more
 * @param leadTimeDemand mean Poisson demand during the lead time, above 0
 * @returns fillRate: share of demand met at once, P(demand < level), not P(demand <= level); mean waiting demand;
 *   mean stock on hand
 * @throws RangeError for an argument outside its range
 * Source: Hopp & Spearman (2008), Factory Physics, 3rd edition, section 2.4.2.
 * Checked: tests/statistics/stock.test.ts (case N06).
 */
export function baseStock({ level, leadTimeDemand }: BaseStockInput): BaseStock {
  requireWholeNumber("level", level);
  requirePositive("leadTimeDemand", leadTimeDemand);
  const { shortage, leftover } = poissonLoss(level, leadTimeDemand);
  return { fillRate: poissonAtMost(level - 1, leadTimeDemand), backorders: shortage, onHand: leftover };
}

export interface BaseStockInput {
  readonly level: number;
  readonly leadTimeDemand: number;
}

export interface BaseStock {
  readonly fillRate: number;
  readonly backorders: number;
  readonly onHand: number;
}
