import { requireNonNegative } from "@/lib/statistics/require";

/** Days from order to shelf, each with its chance; the chances sum to 1. */
export type LeadTime = readonly { readonly days: number; readonly chance: number }[];

export type KnownLeadTime =
  /** Orders received, as many as say how days vary. */
  | { readonly kind: "observed"; readonly leadTime: LeadTime; readonly orders: number }
  /** What the distributor states, or one of few orders: how days vary is not known. */
  | { readonly kind: "stated"; readonly leadTime: LeadTime }
  /** The longest of few orders, since a shorter one would promise what one of them broke. */
  | { readonly kind: "few-orders"; readonly leadTime: LeadTime; readonly orders: number }
  | { readonly kind: "unknown" };

/** Orders from which the days are taken as they were. Own choice, no source. */
const fewestOrders = 8;

/**
 * Days to wait for a part: as its orders took, once there are enough of them; else as stated; else the longest seen.
 * @param observedDays of each order received, in whole or partial days, 0 where it came the same day
 * @param statedDays   what the distributor or the price list says, if anything
 * @throws RangeError for days below 0
 */
export function knownLeadTime(observedDays: readonly number[], statedDays: number | undefined): KnownLeadTime {
  for (const [i, days] of observedDays.entries()) requireNonNegative(`observedDays[${i}]`, days);
  const orders = observedDays.length;
  if (orders >= fewestOrders) {
    const chance = 1 / orders;
    return { kind: "observed", leadTime: observedDays.map((days) => ({ days, chance })), orders };
  }
  if (statedDays !== undefined) {
    requireNonNegative("statedDays", statedDays);
    return { kind: "stated", leadTime: fixedLeadTime(statedDays) };
  }
  if (orders > 0) return { kind: "few-orders", leadTime: fixedLeadTime(Math.max(...observedDays)), orders };
  return { kind: "unknown" };
}

export function fixedLeadTime(days: number): LeadTime {
  return [{ days, chance: 1 }];
}

export function meanLeadTimeDays(leadTime: LeadTime): number {
  return leadTime.reduce((sum, { days, chance }) => sum + days * chance, 0);
}

/** @throws RangeError for no entry, days below 0, or chances that do not sum to 1 */
export function requireLeadTime(leadTime: LeadTime): void {
  for (const [i, { days, chance }] of leadTime.entries()) {
    requireNonNegative(`leadTime[${i}].days`, days);
    requireNonNegative(`leadTime[${i}].chance`, chance);
  }
  const total = leadTime.reduce((sum, { chance }) => sum + chance, 0);
  if (Math.abs(total - 1) > 1e-9) throw new RangeError(`the chances of leadTime must sum to 1; they sum to ${total}`);
}
