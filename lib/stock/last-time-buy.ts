import {
  type CountDistribution,
  countAtMost,
  countMean,
  countQuantile,
} from "@/lib/statistics/demand/count-distribution";
import { requireNonNegative, requirePositive, requireProbability, requireWholeNumber } from "@/lib/statistics/require";

export interface LastTimeBuyQuestion {
  /** Pieces needed until the last unit has left service. */
  readonly demand: CountDistribution;
  readonly onHand: number;
  readonly unitCents: number;
  /** How sure it must last; or what a piece left over costs besides its price, and what a piece short costs. */
  readonly aim:
    | { readonly kind: "service"; readonly service: number }
    | { readonly kind: "costs"; readonly leftoverCents: number; readonly shortCents: number };
  readonly pack: number;
}

export interface LastTimeBuy {
  readonly pieces: number;
  readonly cents: number;
  /** Chance that it lasts to the end, with what is on hand. */
  readonly lasts: number;
  readonly expectedLeftover: number;
  readonly expectedShort: number;
  readonly expected: number;
  /** 9 times in 10 the need lies here. */
  readonly low: number;
  readonly high: number;
}

/**
 * How many to buy of a part that will not be made any more: as many packs as meet the wanted service, or those that
 * cost least where a piece short and a piece left over have their price.
 * @throws RangeError for an argument outside its range
 * Source: the newsvendor, Arrow, Harris & Marschak (1951), Econometrica 19, 250-272.
 * Checked: tests/stock/last-time-buy.test.ts, by hand and by trying all quantities.
 */
export function lastTimeBuy({ demand, onHand, unitCents, aim, pack }: LastTimeBuyQuestion): LastTimeBuy {
  requireWholeNumber("onHand", onHand);
  requireNonNegative("unitCents", unitCents);
  requireWholeNumber("pack", pack);
  requirePositive("pack", pack);
  const packs = packsFor({ demand, onHand, unitCents, aim, pack });
  const total = onHand + packs * pack;
  return {
    pieces: packs * pack,
    cents: packs * pack * unitCents,
    lasts: countAtMost(demand, total),
    expectedLeftover: expectedLeftover(demand, total),
    expectedShort: expectedShort(demand, total),
    expected: countMean(demand),
    low: countQuantile(demand, 0.05),
    high: countQuantile(demand, 0.95),
  };
}

/** The cost is convex in the pieces, so the first pack that does not pay is the end. */
function packsFor({ demand, onHand, unitCents, aim, pack }: LastTimeBuyQuestion): number {
  if (aim.kind === "service") {
    requireProbability("service", aim.service);
    return Math.ceil(Math.max(0, countQuantile(demand, aim.service) - onHand) / pack);
  }
  const { leftoverCents, shortCents } = aim;
  requireNonNegative("leftoverCents", leftoverCents);
  requireNonNegative("shortCents", shortCents);
  const cost = (packs: number) => {
    const total = onHand + packs * pack;
    const idle = leftoverCents * expectedLeftover(demand, total) + shortCents * expectedShort(demand, total);
    return packs * pack * unitCents + idle;
  };
  let packs = 0;
  while (onHand + packs * pack < demand.length && cost(packs + 1) < cost(packs)) packs += 1;
  return packs;
}

function expectedLeftover(demand: CountDistribution, total: number): number {
  return demand.reduce((sum, chance, k) => sum + chance * Math.max(0, total - k), 0);
}

function expectedShort(demand: CountDistribution, total: number): number {
  return demand.reduce((sum, chance, k) => sum + chance * Math.max(0, k - total), 0);
}
