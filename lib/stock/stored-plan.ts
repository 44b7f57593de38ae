/** What follows for ordering a part, as pages show it: plain values, worked out ahead and kept. */
export interface StoredPlan {
  readonly lead: StoredLead;
  readonly reviewDays: number;
  /** Wanted: short in no more than one of so many waits. */
  readonly shortOneIn: number;
  readonly pack: number;
  readonly reorder: StoredReorder;
  readonly order: StoredOrder;
  /** Demand of the two years after today: what lies longer is dead or too much. */
  readonly twoYears: StoredSpan;
}

export type StoredLead =
  | {
      readonly kind: "observed" | "few-orders";
      readonly orders: number;
      readonly mean: number;
      readonly longest: number;
    }
  | { readonly kind: "stated"; readonly mean: number; readonly longest: number }
  /** Nobody said and no order came yet: so many days are taken, which the page says. */
  | { readonly kind: "assumed"; readonly mean: number; readonly longest: number };

export type StoredReorder =
  | {
      readonly kind: "reorder-point";
      readonly level: number;
      readonly service: number;
      readonly expected: number;
      /** Most likely and 9 in 10 ranges of what is needed until an order placed at the next look has come. */
      readonly low60: number;
      readonly high60: number;
      readonly low90: number;
      readonly high90: number;
      /** Chance that no more than 0, 1, 2 … are needed. */
      readonly atMost: readonly number[];
      /** The need in twenty futures of equal chance, least first. */
      readonly twenty: readonly number[];
    }
  | { readonly kind: "nothing-to-bridge" }
  | { readonly kind: "beyond-forecast"; readonly neededDays: number; readonly forecastDays: number }
  | { readonly kind: "no-forecast" };

export type StoredOrder =
  | {
      readonly kind: "quantity";
      readonly pieces: number;
      readonly yearlyDemand: number;
      readonly yearlyCents: number;
      readonly setBy: "costs" | "longest-months" | "one-pack";
    }
  | { readonly kind: "no-demand" };

export interface StoredSpan {
  readonly chanceOfNone: number;
  readonly expected: number;
  /** Enough in 95 futures of 100. */
  readonly enough: number;
}
