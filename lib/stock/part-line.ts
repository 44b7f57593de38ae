import type { StoredPlan, StoredReorder } from "./stored-plan";
import { type OrderSuggestion, suggestOrder } from "./suggest-order";

/** What is there of a part, as the ledger and the order list have it. */
export interface PartStock {
  /** Undefined where nobody ever counted or received any. */
  readonly onHand: number | undefined;
  readonly onOrder: number;
  readonly reserved: number;
}

export type PartLine =
  /** Something is to be ordered; `negative-stock` also says that the ledger cannot be right. */
  | {
      readonly kind: "order" | "negative-stock";
      readonly pieces: number;
      readonly available: number;
      readonly chanceShort: number;
    }
  | { readonly kind: "enough"; readonly available: number; readonly chanceShort: number }
  /** Nobody has said how many there are, so that nothing can be suggested. */
  | { readonly kind: "not-counted" }
  | { readonly kind: "no-need-known"; readonly why: Exclude<StoredReorder["kind"], "reorder-point"> };

/** What to do about a part today. The chance is that of needing more, before an order placed now has come, than there is. */
export function partLine({ reorder, order, pack }: StoredPlan, { onHand, onOrder, reserved }: PartStock): PartLine {
  if (reorder.kind !== "reorder-point") return { kind: "no-need-known", why: reorder.kind };
  if (onHand === undefined) return { kind: "not-counted" };
  const quantity = order.kind === "quantity" ? order.pieces : pack;
  const found: OrderSuggestion = suggestOrder(
    { onHand, onOrder, reserved },
    { reorderPoint: reorder.level, quantity, pack },
  );
  const available = Math.max(0, onHand) + onOrder - reserved;
  const chanceShort = chanceBeyond(reorder.atMost, available);
  if (found.kind === "enough") return { kind: "enough", available, chanceShort };
  // A part that nobody is likely to ask for is not bought for the shelf, however empty it is.
  if (reorder.level === 0 && available === 0 && found.kind === "order")
    return { kind: "enough", available, chanceShort };
  return { kind: found.kind, pieces: found.pieces, available, chanceShort };
}

/** Chance that more than so many are needed, from the chances of no more than 0, 1, 2 … */
export function chanceBeyond(atMost: readonly number[], available: number): number {
  if (available < 0) return 1;
  return 1 - (atMost[Math.min(Math.floor(available), atMost.length - 1)] ?? 1);
}
