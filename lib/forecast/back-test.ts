import { type CountBand, countBand, shareInsideCentral } from "@/lib/statistics/demand/count-band";
import type { CountDistribution } from "@/lib/statistics/demand/count-distribution";
import type { MonthlyCounts } from "@/lib/statistics/demand/learn-levels";
import { requireWholeNumber } from "@/lib/statistics/require";
import { type DemandMethod, type DemandMethodKey, knownCounts } from "./demand-method";
import { lossScale, scaledQuantileLoss } from "./scaled-loss";

/** Months of history before the first forecast that is tested. */
const fewestMonthsForTest = 12;

export interface BackTestQuestion {
  readonly methods: readonly DemandMethod[];
  /** Latest starting points that are tried, each a month after the one before. */
  readonly origins: number;
  /** Months ahead that are judged at each. */
  readonly horizon: number;
}

export type BackTest =
  | {
      readonly kind: "tested";
      /** Starting points tried, and months judged in all: missing ones and those still to come are not. */
      readonly origins: number;
      readonly months: number;
      /** Calendar months among them in which the part was used. */
      readonly monthsUsed: number;
      readonly methods: readonly TestedMethod[];
    }
  | { readonly kind: "too-short"; readonly months: number; readonly needed: number };

export interface TestedMethod {
  readonly key: DemandMethodKey;
  readonly name: string;
  /** Mean scaled quantile loss: smaller is better, 1 is what a quantile costs that knows its months. */
  readonly loss: number;
  /** The same for each starting point, oldest first, for comparing methods point by point. */
  readonly lossByOrigin: readonly number[];
  /** Share of months inside the bands as shown: runs of whole counts, ends included. */
  readonly inside60: number;
  readonly inside90: number;
  /** Share inside the central 90 % with each count spread evenly over its step; see `shareInsideCentral`. */
  readonly central90: number;
}

/**
 * How each method would have done on months that it could not see: from each of the last starting points it forecasts
 * the months after, from the months before alone.
 * @param history parts used in each month, oldest first; undefined where a month is missing
 * @throws RangeError for a count that is no whole number
 * Source: rolling origin, Tashman (2000), International Journal of Forecasting 16, 437-450.
 * Checked: tests/forecast/back-test.test.ts, by hand and by changing months that must not be seen.
 */
export function backTest(history: MonthlyCounts, { methods, origins, horizon }: BackTestQuestion): BackTest {
  history.forEach((count, month) => {
    if (count !== undefined) requireWholeNumber(`history[${month}]`, count);
  });
  const starts = testedOrigins(history, origins);
  if (starts.length === 0) {
    return { kind: "too-short", months: knownCounts(history).length, needed: fewestMonthsForTest + 1 };
  }
  const judged = starts.map((origin) => ({ origin, scale: scaleAt(history, origin), horizon }));
  const tested = methods.map((method) => testOne(history, method, judged));
  const months = judged.reduce((sum, { origin }) => sum + outcomesAfter(history, origin, horizon).length, 0);
  const monthsUsed = history.slice(starts[0]).filter((count) => count !== undefined && count > 0).length;
  return { kind: "tested", origins: starts.length, months, monthsUsed, methods: tested };
}

/** The last starting points with a year known before and at least one known month after. */
function testedOrigins(history: MonthlyCounts, most: number): readonly number[] {
  const starts: number[] = [];
  for (let origin = history.length - 1; origin >= fewestMonthsForTest && starts.length < most; origin--) {
    if (knownCounts(history.slice(0, origin)).length < fewestMonthsForTest) break;
    if (history[origin] !== undefined) starts.unshift(origin);
  }
  return starts;
}

/** Where the months never change, as if one more had used one part: otherwise nothing could be compared. */
function scaleAt(history: MonthlyCounts, origin: number): readonly number[] {
  const counts = knownCounts(history.slice(0, origin));
  const scale = lossScale(counts);
  return scale.some((unit) => unit <= 0) ? lossScale([...counts, (counts[0] ?? 0) + 1]) : scale;
}

interface Start {
  readonly origin: number;
  readonly horizon: number;
  readonly scale: readonly number[];
}

function testOne(history: MonthlyCounts, method: DemandMethod, starts: readonly Start[]): TestedMethod {
  const prepared = method.prepare(history);
  let [inside60, inside90, central90, months] = [0, 0, 0, 0];
  const lossByOrigin = starts.map(({ origin, horizon, scale }) => {
    const forecast = prepared(origin).months(horizon);
    const outcomes = outcomesAfter(history, origin, horizon);
    // Many methods give every month one and the same distribution: its bands are looked for once.
    const bands = new Map<CountDistribution, { readonly narrow: CountBand; readonly wide: CountBand }>();
    const losses = outcomes.map(({ ahead, count }) => {
      const distribution = forecast[ahead] ?? Float64Array.of(1);
      const { narrow, wide } = bands.get(distribution) ?? bandsOf(distribution);
      bands.set(distribution, { narrow, wide });
      months += 1;
      if (isInside(narrow, count)) inside60 += 1;
      if (isInside(wide, count)) inside90 += 1;
      central90 += shareInsideCentral(distribution, 0.9, count);
      return scaledQuantileLoss(distribution, count, scale) ?? 0;
    });
    return losses.reduce((sum, loss) => sum + loss, 0) / losses.length;
  });
  return {
    key: method.key,
    name: method.name,
    loss: lossByOrigin.reduce((sum, loss) => sum + loss, 0) / lossByOrigin.length,
    lossByOrigin,
    inside60: inside60 / months,
    inside90: inside90 / months,
    central90: central90 / months,
  };
}

function outcomesAfter(
  history: MonthlyCounts,
  origin: number,
  horizon: number,
): readonly { readonly ahead: number; readonly count: number }[] {
  return history
    .slice(origin, origin + horizon)
    .flatMap((count, ahead) => (count === undefined ? [] : [{ ahead, count }]));
}

function bandsOf(distribution: CountDistribution): { readonly narrow: CountBand; readonly wide: CountBand } {
  return { narrow: countBand(distribution, 0.6), wide: countBand(distribution, 0.9) };
}

function isInside({ low, high }: { readonly low: number; readonly high: number }, count: number): boolean {
  return count >= low && count <= high;
}
