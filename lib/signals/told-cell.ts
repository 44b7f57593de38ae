import type { ToldCell } from "./cell-weeks";
import type { Settled } from "./settled-quarter";
import type { WeeksSince } from "./weeks-since";

/** A cell came up of which nobody could know when its quarter was settled: all has to be worked out again. */
export class NoHistory extends Error {}

/** All weeks of a cell: those that are settled, and those since. */
export function toldCell({ quarter, historyOf }: Settled, place: number, since: WeeksSince): ToldCell {
  const history = historyOf(place);
  if (history === undefined) throw new NoHistory(`the settled weeks of cell ${place} were not kept`);
  const { key, firstWeek, expectedAhead } = since;
  return {
    key,
    firstWeek: quarter.firstWeek,
    expected: joined(history.expected, since.expected),
    expectedAhead,
    observed: joined(history.observed, since.observed),
    ages: () => {
      const newer = since.ages(history.alikeIds);
      return history.ages.map((one, band) => ({
        band,
        own: one.own + (newer[band]?.own ?? 0),
        ownUnitWeeks: one.ownUnitWeeks + (newer[band]?.ownUnitWeeks ?? 0),
        others: one.others + (newer[band]?.others ?? 0),
        othersUnitWeeks: one.othersUnitWeeks + (newer[band]?.othersUnitWeeks ?? 0),
      }));
    },
    carrying: (from, to) => {
      const carried = new Map(since.carrying(Math.max(from, firstWeek), to));
      // A sum that has been 0 since then has its onset among the newer weeks.
      if (from !== quarter.cells.onsetWeek[place] || from >= firstWeek) return carried;
      for (const [component, jobs] of history.carried) carried.set(component, (carried.get(component) ?? 0) + jobs);
      return carried;
    },
  };
}

function joined(settled: Float64Array, since: Float64Array): Float64Array {
  const all = new Float64Array(settled.length + since.length);
  all.set(settled);
  all.set(since, settled.length);
  return all;
}
