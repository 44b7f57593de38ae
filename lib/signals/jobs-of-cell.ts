import type { CellWeeks } from "./cell-weeks";
import type { LineEvent } from "./type-record";

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
    const place = event.week - firstWeek;
    observed[place] = (observed[place] ?? 0) + event.amount;
    if (event.knownWeek <= event.week) continue;
    const others = late.get(event.week);
    if (others === undefined) late.set(event.week, [event]);
    else others.push(event);
  }
  return {
    unknownAt: (week, seenAt) => {
      let unknown = 0;
      for (const { knownWeek, amount } of late.get(week) ?? []) if (knownWeek > seenAt) unknown += amount;
      return unknown;
    },
    carrying: (component, from, to) =>
      counted.reduce(
        (sum, { failed, week, amount }) => sum + (failed === component && week >= from && week <= to ? amount : 0),
        0,
      ),
  };
}
