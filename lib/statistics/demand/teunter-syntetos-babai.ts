import { requirePositive } from "../require";
import { arrivalsOf, requireDemand, requireWeight } from "./croston";

/**
 * Mean demand per period of a slow part, with the chance of any demand updated every period: unlike Croston's, the
 * forecast falls while nothing is asked for, so a part that is dying out is noticed.
 * @param demand    one number per period, 0 or more, oldest first
 * @param smoothing weights of the newest size and of the newest yes-or-no, each in (0, 1]
 * @param start     "first-demand" begins with the first size and one over its position, and updates from the period
 *   after it; or the caller gives size and chance, and every period updates them
 * @returns "no-demand" where nothing was ever asked for
 * @throws RangeError for an argument outside its range
 * Source: Teunter, Syntetos & Babai (2011), European Journal of Operational Research 214, 606-615.
 * Checked: tests/statistics/demand.test.ts, by hand.
 */
export function teunterSyntetosBabai({ demand, smoothing, start }: TsbInput): TsbForecast {
  requireDemand(demand);
  requireWeight("smoothing.size", smoothing.size);
  requireWeight("smoothing.chance", smoothing.chance);
  const first = arrivalsOf(demand)[0];
  if (first === undefined) return { kind: "no-demand" };
  const begin = start === "first-demand" ? { size: first.size, chance: 1 / first.interval } : start;
  requirePositive("start.size", begin.size);
  if (!(begin.chance >= 0 && begin.chance <= 1))
    throw new RangeError(`start.chance must lie in 0..1; it is ${begin.chance}`);
  let { size, chance } = begin;
  for (const quantity of demand.slice(start === "first-demand" ? first.interval : 0)) {
    if (quantity > 0) size += smoothing.size * (quantity - size);
    chance += smoothing.chance * ((quantity > 0 ? 1 : 0) - chance);
  }
  return { kind: "forecast", size, chance, perPeriod: size * chance };
}

export interface TsbInput {
  readonly demand: readonly number[];
  readonly smoothing: { readonly size: number; readonly chance: number };
  readonly start: "first-demand" | { readonly size: number; readonly chance: number };
}

export type TsbForecast =
  | { readonly kind: "forecast"; readonly size: number; readonly chance: number; readonly perPeriod: number }
  | { readonly kind: "no-demand" };
