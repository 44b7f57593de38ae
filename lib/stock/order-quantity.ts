import { requireNonNegative, requirePositive, requireWholeNumber } from "@/lib/statistics/require";

export interface OrderCosts {
  readonly yearlyDemand: number;
  /** Cents that one order costs besides the parts: freight, handling, booking. */
  readonly orderCents: number;
  readonly unitCents: number;
  /** Share of a part's cost that a year on the shelf takes: money, room, loss; 0 or more. */
  readonly holdingPerYear: number;
  /** Pieces that come together, 1 or more. */
  readonly pack: number;
  /** Months that no order may outlast, since parts are superseded meanwhile; above 0. */
  readonly longestMonths: number;
}

export type OrderQuantity =
  | {
      readonly kind: "quantity";
      /** A whole number of packs, at least one. */
      readonly pieces: number;
      readonly packs: number;
      /** Cents a year for ordering and for the half order that lies on the shelf on average. */
      readonly yearlyCents: number;
      /** What set it: the costs, the months it may last, or the pack itself. */
      readonly setBy: "costs" | "longest-months" | "one-pack";
    }
  | { readonly kind: "no-demand" };

/**
 * The number of packs in an order that costs least a year: orders cost, and so does what lies. Cost is convex in the
 * pieces, so one of the two multiples of the pack around √(2 · orders' cost · demand / holding) is the cheapest.
 * @throws RangeError for an argument outside its range
 * Source: Harris (1913), Factory, The Magazine of Management 10, 135-136, 152; multiples of a pack as in Silver, Pyke
 *   & Thomas (2017), section 4.3 (integer constraint).
 * Checked: tests/stock/order-quantity.test.ts, by hand and by trying all multiples.
 */
export function orderQuantity(costs: OrderCosts): OrderQuantity {
  const { yearlyDemand, orderCents, unitCents, holdingPerYear, pack, longestMonths } = costs;
  requireNonNegative("yearlyDemand", yearlyDemand);
  requireNonNegative("orderCents", orderCents);
  requireNonNegative("unitCents", unitCents);
  requireNonNegative("holdingPerYear", holdingPerYear);
  requireWholeNumber("pack", pack);
  requirePositive("pack", pack);
  requirePositive("longestMonths", longestMonths);
  if (yearlyDemand === 0) return { kind: "no-demand" };
  const most = Math.max(1, Math.floor((yearlyDemand * longestMonths) / 12 / pack));
  const holding = holdingPerYear * unitCents;
  const free = holding === 0 ? Number.POSITIVE_INFINITY : Math.sqrt((2 * orderCents * yearlyDemand) / holding) / pack;
  const yearly = (packs: number) => (orderCents * yearlyDemand) / (packs * pack) + (holding * packs * pack) / 2;
  const near = free >= most ? [most] : [Math.max(1, Math.floor(free)), Math.min(most, Math.floor(free) + 1)];
  const packs = near.reduce((best, one) => (yearly(one) < yearly(best) ? one : best));
  const setBy = free > most && most > 1 ? "longest-months" : packs === 1 && free < 1 ? "one-pack" : "costs";
  return {
    kind: "quantity",
    pieces: packs * pack,
    packs,
    yearlyCents: yearly(packs),
    setBy: most === 1 ? "one-pack" : setBy,
  };
}
