import type { StoredPlan } from "./stored-plan";

export type IdleStock =
  /** Most likely nobody asks for one in two years. */
  | { readonly kind: "dead"; readonly pieces: number }
  /** More than two years and the reorder point can need. */
  | { readonly kind: "too-many"; readonly pieces: number; readonly enough: number }
  | { readonly kind: "in-use" };

/** Chance that none is asked for, from which on a part counts as dead. Own choice, no source. */
const chanceOfNone = 0.8;

/** What of a part's stock will hardly be asked for, from the plan as it is kept. Checked: tests/stock/idle-stock.test.ts, by hand. */
export function idleStock({ twoYears, reorder }: Pick<StoredPlan, "twoYears" | "reorder">, onHand: number): IdleStock {
  if (onHand <= 0 || reorder.kind === "no-forecast") return { kind: "in-use" };
  if (twoYears.chanceOfNone >= chanceOfNone) return { kind: "dead", pieces: onHand };
  const enough = Math.max(twoYears.enough, reorder.kind === "reorder-point" ? reorder.level : 0);
  return onHand > enough ? { kind: "too-many", pieces: onHand - enough, enough } : { kind: "in-use" };
}
