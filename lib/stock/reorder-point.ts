import type { DemandPaths } from "@/lib/forecast/paths";
import {
  type CountDistribution,
  countAtMost,
  countMean,
  countQuantile,
  mixedDistribution,
  type WeighedDistribution,
} from "@/lib/statistics/demand/count-distribution";
import { requireNonNegative, requireProbability } from "@/lib/statistics/require";
import { demandBetween } from "./demand-between";
import { type LeadTime, requireLeadTime } from "./lead-time";

export interface ReorderQuestion {
  readonly paths: DemandPaths;
  /** Days of the first month of the futures that are gone today. */
  readonly goneDays: number;
  readonly leadTime: LeadTime;
  /** Days between two looks at the stock; 0 where every use is looked at. */
  readonly reviewDays: number;
  /** Wanted chance that stock lasts from an order to the arrival of the next, in (0, 1). */
  readonly service: number;
}

export type ReorderPoint =
  | {
      readonly kind: "reorder-point";
      /** Order as soon as on hand plus on order less reserved is at or below it; whole pieces. */
      readonly level: number;
      /** Chance that this level lasts: at least the one wanted. */
      readonly service: number;
      /** Needed until an order placed at the next look has come. */
      readonly demand: CountDistribution;
      readonly expected: number;
      /** Pieces held above what is expected: they pay for the service. */
      readonly safety: number;
    }
  /** Lead time and review are both zero: a part can be had when it is needed, and none must lie in stock. */
  | { readonly kind: "nothing-to-bridge" }
  | { readonly kind: "beyond-forecast"; readonly neededDays: number; readonly forecastDays: number };

/**
 * The least stock that lasts, with the wanted chance, until an order placed now or at the next look has come: the
 * quantile of the demand over lead time and review. Where lead times vary, each is weighed with its chance.
 * @throws RangeError for an argument outside its range
 * Source: Silver, Pyke & Thomas (2017), Inventory and Production Management in Supply Chains, 4th edition, section 6.7
 *   (P1 service) and 6.9 (review period), with the simulated demand in place of a normal one.
 * Checked: tests/stock/reorder-point.test.ts: stat case N06; mean and variance under a random lead time.
 */
export function reorderPoint({ paths, goneDays, leadTime, reviewDays, service }: ReorderQuestion): ReorderPoint {
  requireLeadTime(leadTime);
  requireNonNegative("reviewDays", reviewDays);
  requireProbability("service", service);
  const longest = reviewDays + Math.max(...leadTime.filter(({ chance }) => chance > 0).map(({ days }) => days));
  if (longest === 0) return { kind: "nothing-to-bridge" };
  const weighed: WeighedDistribution[] = [];
  for (const [days, chance] of byDays(leadTime)) {
    const between = demandBetween(paths, { fromDay: goneDays, toDay: goneDays + days + reviewDays });
    if (between.kind === "beyond-forecast")
      return { kind: "beyond-forecast", neededDays: goneDays + longest, forecastDays: between.forecastDays };
    weighed.push({ weight: chance, distribution: between.demand });
  }
  return { kind: "reorder-point", ...levelFor(mixedDistribution(weighed), service) };
}

function levelFor(demand: CountDistribution, service: number) {
  const level = countQuantile(demand, service);
  const expected = countMean(demand);
  return { level, service: countAtMost(demand, level), demand, expected, safety: level - expected };
}

/** Orders that took as many days are worked out once. */
function byDays(leadTime: LeadTime): ReadonlyMap<number, number> {
  const chances = new Map<number, number>();
  for (const { days, chance } of leadTime) if (chance > 0) chances.set(days, (chances.get(days) ?? 0) + chance);
  return chances;
}
