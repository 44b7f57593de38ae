// Stock from demand: how much has to be there, when to order, how many, and what a truck should carry.
import type { DemandPaths } from "@/lib/forecast/paths";
import { commonDivisor } from "@/lib/statistics/common-divisor";
import { binomialDistribution } from "@/lib/statistics/demand/binomial-distribution";
import { stretched } from "@/lib/statistics/demand/compound-distribution";
import type { CountDistribution } from "@/lib/statistics/demand/count-distribution";
import { requireNonNegative } from "@/lib/statistics/require";

/** Days of a month of the forecast: a year over twelve. */
export const monthDays = 30.4375;

/** A stretch of time from now, in days; the futures begin with the first month of the forecast. */
export interface DaySpan {
  /** Days of the first month that are gone today. */
  readonly fromDay: number;
  readonly toDay: number;
}

export type DemandBetween =
  | { readonly kind: "demand"; readonly demand: CountDistribution }
  /** The futures end before the span does. */
  | { readonly kind: "beyond-forecast"; readonly forecastDays: number };

/**
 * Parts needed within a stretch of days, over all futures. Each piece of a month falls on any of its days alike, so
 * that of a month partly covered a binomial share is needed; nothing is drawn. What always goes by the four falls on
 * its days by the four.
 * @param paths futures of the part, one row each, one whole number per month; at least one
 * @throws RangeError for a span that ends before it begins, or without futures
 * Checked: tests/stock/reorder-point.test.ts, against Poisson demand, whose share is Poisson again.
 */
export function demandBetween(paths: DemandPaths, { fromDay, toDay }: DaySpan): DemandBetween {
  requireNonNegative("fromDay", fromDay);
  if (!(toDay >= fromDay)) throw new RangeError(`toDay must not be before fromDay ${fromDay}; it is ${toDay}`);
  const [first] = paths;
  if (first === undefined) throw new RangeError("paths must hold at least one future");
  const months = first.length;
  if (toDay > months * monthDays + 1e-9) return { kind: "beyond-forecast", forecastDays: months * monthDays };
  const shares = first.map((_, month) => {
    const from = Math.max(0, fromDay / monthDays - month);
    return Math.max(0, Math.min(1, toDay / monthDays - month) - from);
  });
  const lot = commonLot(paths);
  const inLots = lot === 1 ? paths : paths.map((row) => row.map((count) => count / lot));
  return { kind: "demand", demand: stretched(mixedRows(inLots, shares), lot) };
}

/** The largest number of which every month of every future is a multiple; 1 where nothing is ever needed. */
function commonLot(paths: DemandPaths): number {
  let lot = 0;
  for (const row of paths) {
    for (const count of row) lot = commonDivisor(lot, count);
    if (lot === 1) break;
  }
  return Math.max(1, lot);
}

/** Rows whose whole and partial months agree have one distribution: each is worked out once. */
function mixedRows(paths: DemandPaths, shares: readonly number[]): CountDistribution {
  const partial = shares.flatMap((share, month) => (share > 0 && share < 1 ? [month] : []));
  const rows = new Map<string, { readonly whole: number; readonly parts: readonly number[]; times: number }>();
  let room = 1;
  for (const row of paths) {
    const whole = row.reduce((sum, count, month) => (shares[month] === 1 ? sum + count : sum), 0);
    const parts = partial.map((month) => row[month] ?? 0);
    const key = `${whole},${parts.join(",")}`;
    const known = rows.get(key) ?? { whole, parts, times: 0 };
    known.times += 1;
    rows.set(key, known);
    room = Math.max(room, 1 + whole + parts.reduce((sum, count) => sum + count, 0));
  }
  const mixed = new Float64Array(room);
  for (const { whole, parts, times } of rows.values()) {
    const some = parts.map((count, i) => binomialDistribution(count, shares[partial[i] ?? 0] ?? 0));
    const sum = some.reduce(addedDistributions, Float64Array.of(1));
    for (const [k, chance] of sum.entries()) {
      mixed[whole + k] = (mixed[whole + k] ?? 0) + (chance * times) / paths.length;
    }
  }
  return mixed;
}

/** Distribution of the sum of two independent counts. */
function addedDistributions(a: CountDistribution, b: CountDistribution): CountDistribution {
  const sum = new Float64Array(a.length + b.length - 1);
  for (const [i, one] of a.entries()) {
    if (one === 0) continue;
    for (const [j, other] of b.entries()) sum[i + j] = (sum[i + j] ?? 0) + one * other;
  }
  return sum;
}
