import type { CellWeeks } from "./cell-weeks";
import type { LineEvent } from "./signal-record";

/**
 * The jobs of one cell by week of the call, and how many of them were on record when.
 * @param observed  one place per week, all 0: takes the counts
 */
export function jobsOfCell(
  firstWeek: number,
  counted: readonly LineEvent[],
  observed: Float64Array,
): Pick<CellWeeks, "unknownAt" | "carrying"> {
  const late = new Map<number, LineEvent[]>();
  for (const event of counted) {
    const place = event.failedWeek - firstWeek;
    observed[place] = (observed[place] ?? 0) + event.jobs;
    if (event.knownWeek <= event.failedWeek) continue;
    const others = late.get(event.failedWeek);
    if (others === undefined) late.set(event.failedWeek, [event]);
    else others.push(event);
  }
  return {
    unknownAt: (week, seenAt) => {
      let unknown = 0;
      for (const { knownWeek, jobs } of late.get(week) ?? []) if (knownWeek > seenAt) unknown += jobs;
      return unknown;
    },
    carrying: (component, from, to) =>
      counted.reduce(
        (sum, { failed, failedWeek: week, jobs }) =>
          sum + (failed === component && week >= from && week <= to ? jobs : 0),
        0,
      ),
  };
}
