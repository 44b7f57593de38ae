import { poissonQuantile } from "../discrete/poisson";
import { normalCdf, normalDensity, normalQuantile } from "../normal";
import { requireNonNegative, requirePositive } from "../require";
import { poissonLoss, type StockLoss } from "./poisson-loss";

/**
 * The stock level for one period that balances the cost of a unit left over against that of a unit short.
 * @param overage  cost of one unit left over, above 0
 * @param underage cost of one unit short, above 0
 * @param demand   normal (mean, standardDeviation above 0) or Poisson (mean 0 or more, whole level)
 * @returns the level, expected shortage, leftover and cost, and the share of demand met from stock
 *   (1 − shortage / mean); a mean demand of 0 has no such share
 * @throws RangeError for an argument outside its range
 * Source: Porteus (2002), Foundations of Stochastic Inventory Theory, chapter 1; Snyder & Shen (2019),
 *   Fundamentals of Supply Chain Theory, 2nd edition, section 4.3.
 * Checked: tests/statistics/stock.test.ts (cases N01, N03).
 */
export function newsvendor({ overage, underage, demand }: NewsvendorInput): Newsvendor {
  requirePositive("overage", overage);
  requirePositive("underage", underage);
  const critical = underage / (underage + overage);
  const { level, loss } =
    demand.kind === "normal" ? normalLevel(critical, demand) : poissonLevel(critical, demand.mean);
  const expectedCost = overage * loss.leftover + underage * loss.shortage;
  const fill: Newsvendor["fill"] =
    demand.mean > 0 ? { kind: "share", share: 1 - loss.shortage / demand.mean } : { kind: "no-demand" };
  return { level, critical, ...loss, expectedCost, fill };
}

export interface NewsvendorInput {
  readonly overage: number;
  readonly underage: number;
  readonly demand:
    | { readonly kind: "normal"; readonly mean: number; readonly standardDeviation: number }
    | { readonly kind: "poisson"; readonly mean: number };
}

export interface Newsvendor extends StockLoss {
  readonly level: number;
  readonly critical: number;
  readonly expectedCost: number;
  readonly fill: { readonly kind: "share"; readonly share: number } | { readonly kind: "no-demand" };
}

interface Level {
  readonly level: number;
  readonly loss: StockLoss;
}

function normalLevel(
  critical: number,
  { mean, standardDeviation }: { mean: number; standardDeviation: number },
): Level {
  requirePositive("standardDeviation", standardDeviation);
  const z = normalQuantile(critical);
  const shortage = standardDeviation * (normalDensity(z) - z * normalCdf(-z));
  const leftover = standardDeviation * (normalDensity(z) + z * normalCdf(z));
  return { level: mean + z * standardDeviation, loss: { shortage, leftover } };
}

function poissonLevel(critical: number, mean: number): Level {
  requireNonNegative("mean", mean);
  const level = poissonQuantile(critical, mean);
  return { level, loss: poissonLoss(level, mean) };
}
