import { requirePositive, requireWholeNumber } from "@/lib/statistics/require";

/** What is there of a part and what is spoken for; on hand below zero means that movements are missing. */
export interface StockPosition {
  readonly onHand: number;
  readonly onOrder: number;
  readonly reserved: number;
}

export interface OrderRule {
  readonly reorderPoint: number;
  /** Pieces of the usual order; see `orderQuantity`. */
  readonly quantity: number;
  readonly pack: number;
}

export type OrderSuggestion =
  | { readonly kind: "order"; readonly pieces: number; readonly packs: number; readonly available: number }
  | { readonly kind: "enough"; readonly available: number }
  /** Fewer than none on hand: the count is wrong. What to order is said as if none were there. */
  | { readonly kind: "negative-stock"; readonly onHand: number; readonly pieces: number; readonly packs: number };

/**
 * What to order now: nothing above the reorder point; at or below it the usual quantity, or as many packs as lift the
 * stock above it where that is more.
 * @throws RangeError for numbers that are not whole, or on order, reserved or reorder point below 0
 * Source: the (s, nQ) rule, Hadley & Whitin (1963), Analysis of Inventory Systems, section 5-2.
 */
export function suggestOrder(stock: StockPosition, { reorderPoint, quantity, pack }: OrderRule): OrderSuggestion {
  if (!Number.isSafeInteger(stock.onHand)) throw new RangeError(`onHand must be a whole number; it is ${stock.onHand}`);
  for (const name of ["onOrder", "reserved"] as const) requireWholeNumber(name, stock[name]);
  requireWholeNumber("reorderPoint", reorderPoint);
  requireWholeNumber("quantity", quantity);
  requireWholeNumber("pack", pack);
  requirePositive("pack", pack);
  const available = Math.max(0, stock.onHand) + stock.onOrder - stock.reserved;
  const wanted = available > reorderPoint ? 0 : Math.max(quantity, reorderPoint + 1 - available);
  const packs = Math.ceil(wanted / pack);
  const order = { pieces: packs * pack, packs };
  if (stock.onHand < 0) return { kind: "negative-stock", onHand: stock.onHand, ...order };
  return wanted === 0 ? { kind: "enough", available } : { kind: "order", ...order, available };
}
