import { metShares } from "./truck";
import type { TruckQuestion } from "./truck-stock";

/** Ways to spread a visit's worth over its parts: evenly, by price, and nearly all on the dearest. */
const byPricePower = [0, 1, 3, 9] as const;

/**
 * Visits done at once that no choice within the budget exceeds. A product of shares is at most any weighted mean of
 * them, so each visit's worth is spread over its parts; what then remains is a knapsack of pieces with diminishing
 * gains, filled to the last cent with a piece cut off. The least of the bounds of several ways to spread holds.
 */
export function truckBound(question: TruckQuestion): number {
  return Math.min(...byPricePower.map((power) => boundOf(question, power)));
}

function boundOf({ parts, kinds, budgetCents }: TruckQuestion, power: number): number {
  const weightOf = new Map(parts.map(({ part, unitCents }) => [part, unitCents ** power]));
  const worth = new Map<string, number>();
  let bound = 0;
  for (const { parts: needed, visits } of kinds) {
    if (needed.length === 0) bound += visits;
    const total = needed.reduce((sum, part) => sum + (weightOf.get(part) ?? 0), 0);
    for (const part of needed) {
      worth.set(part, (worth.get(part) ?? 0) + (visits * (weightOf.get(part) ?? 0)) / total);
    }
  }
  const pieces: { readonly gain: number; readonly cents: number }[] = [];
  for (const { part, demand, carried, unitCents } of parts) {
    const value = worth.get(part) ?? 0;
    const shares = metShares(demand);
    bound += value * (shares[carried] ?? 1);
    for (let n = carried; n < shares.length; n++) {
      pieces.push({ gain: value * ((shares[n + 1] ?? 1) - (shares[n] ?? 1)), cents: unitCents });
    }
  }
  let left = budgetCents;
  for (const { gain, cents } of pieces.toSorted((a, b) => b.gain / b.cents - a.gain / a.cents)) {
    const taken = Math.min(1, left / cents);
    bound += taken * gain;
    left -= taken * cents;
  }
  return bound;
}
