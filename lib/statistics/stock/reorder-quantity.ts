import { poissonAtMost, poissonQuantile } from "../discrete/poisson";
import { requireNonNegative, requirePositive, requireWholeNumber } from "../require";
import { poissonLoss } from "./poisson-loss";

/**
 * Long-run measures of ordering `quantity` whenever stock on hand plus on order falls to `reorderPoint`, under
 * Poisson demand and a fixed lead time; what cannot be met waits.
 * @param costs        holding and stockout per unit and time, fixed per order; 0 or more
 * @param demandRate   units per time, above 0
 * @param leadTime     above 0
 * @param reorderPoint whole number, may be negative
 * @param quantity     whole number, 1 or more
 * @returns cost per unit of time, share of demand met at once, mean waiting demand and mean stock on hand
 * @throws RangeError for an argument outside its range
 * Source: Federgruen & Zheng (1992), Operations Research 40, 808-813; Snyder & Shen (2019), section 5.4.
 * Checked: tests/statistics/stock.test.ts (case N05).
 */
export function reorderMeasures(input: ReorderInput & ReorderPolicy): ReorderMeasures {
  const { costs, demandRate, reorderPoint, quantity } = input;
  requireInput(input);
  if (!Number.isSafeInteger(reorderPoint))
    throw new RangeError(`reorderPoint must be a whole number; it is ${reorderPoint}`);
  requireWholeNumber("quantity", quantity);
  requirePositive("quantity", quantity);
  const mean = demandRate * input.leadTime;
  // Stock on hand plus on order is equally often at each of reorderPoint + 1 … reorderPoint + quantity.
  const positions = Array.from({ length: quantity }, (_, i) => reorderPoint + 1 + i);
  const average = (pick: (position: number) => number) =>
    positions.reduce((sum, position) => sum + pick(position), 0) / quantity;
  const backorders = average((position) => poissonLoss(position, mean).shortage);
  const onHand = average((position) => poissonLoss(position, mean).leftover);
  const costPerTime = (costs.fixed * demandRate) / quantity + costs.holding * onHand + costs.stockout * backorders;
  return { costPerTime, fillRate: average((position) => poissonAtMost(position - 1, mean)), backorders, onHand };
}

export interface ReorderInput {
  readonly costs: { readonly holding: number; readonly stockout: number; readonly fixed: number };
  readonly demandRate: number;
  readonly leadTime: number;
}

export interface ReorderPolicy {
  readonly reorderPoint: number;
  readonly quantity: number;
}

export interface ReorderMeasures {
  readonly costPerTime: number;
  readonly fillRate: number;
  readonly backorders: number;
  readonly onHand: number;
}

/**
 * The policy of least cost, exactly: starting from the best single position, the range of positions grows at its
 * cheaper end for as long as that lowers the average.
 * @throws RangeError for an argument outside its range, or for holding or stockout costs of 0
 */
export function cheapestReorderPolicy(input: ReorderInput): ReorderPolicy & { readonly costPerTime: number } {
  const { costs, demandRate, leadTime } = input;
  requireInput(input);
  requirePositive("costs.holding", costs.holding);
  requirePositive("costs.stockout", costs.stockout);
  const mean = demandRate * leadTime;
  const costAt = (position: number) => {
    const { shortage, leftover } = poissonLoss(position, mean);
    return costs.holding * leftover + costs.stockout * shortage;
  };
  const best = poissonQuantile(costs.stockout / (costs.stockout + costs.holding), mean);
  let reorderPoint = best - 1;
  let quantity = 1;
  let sum = costs.fixed * demandRate + costAt(best);
  for (;;) {
    const below = costAt(reorderPoint);
    const above = costAt(reorderPoint + quantity + 1);
    if (Math.min(below, above) >= sum / quantity) return { reorderPoint, quantity, costPerTime: sum / quantity };
    sum += Math.min(below, above);
    quantity += 1;
    if (below <= above) reorderPoint -= 1;
  }
}

function requireInput({ costs, demandRate, leadTime }: ReorderInput): void {
  requireNonNegative("costs.holding", costs.holding);
  requireNonNegative("costs.stockout", costs.stockout);
  requireNonNegative("costs.fixed", costs.fixed);
  requirePositive("demandRate", demandRate);
  requirePositive("leadTime", leadTime);
}
