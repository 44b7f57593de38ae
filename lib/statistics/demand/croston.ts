import { requireNonNegative, requirePositive } from "../require";

/**
 * Mean demand per period of a part that is asked for only now and then: size and interval are smoothed apart, and
 * only when something is asked for.
 * @param demand    one number per period, 0 or more, oldest first
 * @param smoothing weights of the newest size and the newest interval, each in (0, 1]
 * @param method    "croston" is biased upwards; "syntetos-boylan" multiplies it by 1 − a/2, "shale-boylan-johnston"
 *   by 1 − a/(2 − a), where a is the interval's weight
 * @param start     "first-demand" begins with the first size and its position, "mean-interval" with the first size
 *   and the mean of all intervals, or the caller gives both
 * @returns "no-demand" where nothing was ever asked for
 * @throws RangeError for an argument outside its range
 * Source: Croston (1972), Operational Research Quarterly 23, 289-303; Syntetos & Boylan (2005), International
 *   Journal of Forecasting 21, 303-314; Shale, Boylan & Johnston (2006), JORS 57, 588-592.
 * Checked: tests/statistics/demand.test.ts (case F01).
 */
export function croston({ demand, smoothing, method, start }: CrostonInput): IntermittentForecast {
  requireDemand(demand);
  requireWeight("smoothing.size", smoothing.size);
  requireWeight("smoothing.interval", smoothing.interval);
  const arrivals = arrivalsOf(demand);
  const first = arrivals[0];
  if (first === undefined) return { kind: "no-demand" };
  let { size, interval } = startValues(start, arrivals, first);
  // Values given by the caller come before the first demand; the other two are taken from it.
  for (const arrival of typeof start === "string" ? arrivals.slice(1) : arrivals) {
    size += smoothing.size * (arrival.size - size);
    interval += smoothing.interval * (arrival.interval - interval);
  }
  return { kind: "forecast", size, interval, perPeriod: (correction(method, smoothing.interval) * size) / interval };
}

export interface CrostonInput {
  readonly demand: readonly number[];
  readonly smoothing: { readonly size: number; readonly interval: number };
  readonly method: "croston" | "syntetos-boylan" | "shale-boylan-johnston";
  readonly start: "first-demand" | "mean-interval" | { readonly size: number; readonly interval: number };
}

export type IntermittentForecast =
  | { readonly kind: "forecast"; readonly size: number; readonly interval: number; readonly perPeriod: number }
  | { readonly kind: "no-demand" };

export interface Arrival {
  readonly size: number;
  readonly interval: number;
}

/** Each period with demand, with the periods since the one before (or since the series began). */
export function arrivalsOf(demand: readonly number[]): readonly Arrival[] {
  let last = -1;
  return demand.flatMap((size, period) => {
    if (size === 0) return [];
    const interval = period - last;
    last = period;
    return [{ size, interval }];
  });
}

export function requireDemand(demand: readonly number[]): void {
  demand.forEach((quantity, i) => {
    requireNonNegative(`demand[${i}]`, quantity);
  });
}

export function requireWeight(name: string, weight: number): void {
  if (!(weight > 0 && weight <= 1)) throw new RangeError(`${name} must be above 0 and at most 1; it is ${weight}`);
}

function startValues(start: CrostonInput["start"], arrivals: readonly Arrival[], first: Arrival): Arrival {
  if (start === "first-demand") return first;
  if (start === "mean-interval") {
    return { size: first.size, interval: arrivals.reduce((sum, { interval }) => sum + interval, 0) / arrivals.length };
  }
  requirePositive("start.size", start.size);
  requirePositive("start.interval", start.interval);
  return start;
}

function correction(method: CrostonInput["method"], weight: number): number {
  switch (method) {
    case "croston":
      return 1;
    case "syntetos-boylan":
      return 1 - weight / 2;
    case "shale-boylan-johnston":
      return 1 - weight / (2 - weight);
  }
}
