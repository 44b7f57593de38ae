import { formatCount } from "@/lib/format/format-count";
import { formatMoney } from "@/lib/format/format-money";
import type { ShareRange, TruckTrial } from "@/lib/stock/truck-trial";
import type { TruckView } from "./load-truck";

export function truckFinding({ technician, truck, currency }: TruckView): string {
  if (technician === undefined) return "No technician on any job of the last year";
  if (truck === undefined || truck.visits === 0) return `${technician}: no visits that took parts`;
  const { before, after, visits, spentCents, steps } = truck.stock;
  const now = inHundred(before, visits);
  if (steps.length === 0) return `${technician}’s truck completes ${now} visits that need parts at once`;
  return `${formatMoney({ cents: spentCents, currency })} more in ${technician}’s truck: ${inHundred(after, visits)} visits that need parts are done at once, instead of ${now}`;
}

/** How sure that is: in years like the last one. */
export function trialWords({ before, after, gain }: TruckTrial, fills: boolean): string {
  const sentence = (name: string, range: ShareRange) =>
    `${name}, 9 years in 10 between ${hundred(range.low)} and ${hundred(range.high)} in 100`;
  if (!fills) return `${sentence("As it is", before)} of the visits that need parts are done at once.`;
  return `${sentence("As it is", before)} of the visits that need parts are done at once; ${sentence("filled so", after)}. It gains between ${hundred(gain.low)} and ${hundred(gain.high)} in 100.`;
}

function hundred(share: number): string {
  return formatCount(Math.round(100 * share));
}

/** "61 in 100" */
export function inHundred(part: number, whole: number): string {
  return whole <= 0 ? "none" : `${formatCount(Math.round((100 * part) / whole))} in 100`;
}
