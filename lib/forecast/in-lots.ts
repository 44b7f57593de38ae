import { commonDivisor } from "@/lib/statistics/common-divisor";
import { stretched } from "@/lib/statistics/demand/compound-distribution";
import type { MonthlyCounts } from "@/lib/statistics/demand/learn-levels";
import type { DemandMethod, PreparedMethod } from "./demand-method";

/** Months with use from which a common number of pieces is believed: fewer agree by chance. Own choice, no source. */
const fewestMonthsUsed = 6;

/**
 * Pieces that a part is always used by, where all its months are multiples of one number: springs by the four. Counted
 * singly, months would be thought possible that never are, and those that are not surely enough.
 * @returns 1 where there is no such number, or too few months to tell
 */
export function lotOf(history: MonthlyCounts): number {
  let [lot, used] = [0, 0];
  for (const count of history) {
    if (count === undefined || count === 0) continue;
    used += 1;
    lot = commonDivisor(lot, count);
    if (lot === 1) return 1;
  }
  return used >= fewestMonthsUsed ? lot : 1;
}

/** Months in lots instead of pieces. */
export function inLots(history: MonthlyCounts, lot: number): MonthlyCounts {
  return lot === 1 ? history : history.map((count) => (count === undefined ? undefined : Math.floor(count / lot)));
}

/** The same method, counting lots where the months before a starting point are all of one. */
export function countingLots(method: DemandMethod): DemandMethod {
  return {
    ...method,
    prepare: (history) => {
      const prepared = new Map<number, PreparedMethod>();
      return (origin) => {
        const lot = lotOf(history.slice(0, origin));
        // Months from the origin on may be of other sizes; the method does not look at them.
        const inner = prepared.get(lot) ?? method.prepare(inLots(history, lot));
        prepared.set(lot, inner);
        const future = inner(origin);
        if (lot === 1) return future;
        return {
          months: (horizon) => future.months(horizon).map((month) => stretched(month, lot)),
          path: (horizon, draws) => future.path(horizon, draws).map((count) => count * lot),
        };
      };
    },
  };
}
