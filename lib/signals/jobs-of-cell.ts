import type { CellWeeks } from "./cell-weeks";
import type { Events } from "./line-events";

interface CellJobs {
  readonly events: readonly Events[];
  /** Whether there is an expectation in the week and at the age of an event. */
  readonly isCovered: (failedWeek: number, inServiceWeek: number) => boolean;
}

/** One place per week, all 0: a large company has a hundred thousand cells, which can share the room. */
interface JobsRoom {
  /** Takes the counts. */
  readonly observed: Float64Array;
  /** Takes the last week by whose end a job of that week came on record, where it was a later one. */
  readonly lastKnown: Int32Array;
}

/** The jobs of one cell by week of the call, and how many of them were on record when. */
export function jobsOfCell(
  firstWeek: number,
  { events, isCovered }: CellJobs,
  { observed, lastKnown }: JobsRoom,
): Pick<CellWeeks, "unknownAt" | "carrying"> {
  const late: LateJobs[] = [];
  for (const { columns, from, until } of events) {
    const { failedWeek, knownWeek, inServiceWeek, jobs } = columns;
    for (let at = from; at < until; at++) {
      const week = failedWeek[at] ?? 0;
      if (!isCovered(week, inServiceWeek[at] ?? 0)) continue;
      const [place, known, count] = [week - firstWeek, knownWeek[at] ?? 0, jobs[at] ?? 0];
      observed[place] = (observed[place] ?? 0) + count;
      if (known <= week) continue;
      late.push({ week, known, count });
      lastKnown[place] = Math.max(lastKnown[place] ?? 0, known);
    }
  }
  return {
    unknownAt: (asked, seenAt) => {
      if ((lastKnown[asked - firstWeek] ?? 0) <= seenAt) return 0;
      let unknown = 0;
      for (const { week, known, count } of late) if (week === asked && known > seenAt) unknown += count;
      return unknown;
    },
    carrying: (first, last) => carriedBy({ events, isCovered }, first, last),
  };
}

interface LateJobs {
  readonly week: number;
  readonly known: number;
  readonly count: number;
}

function carriedBy({ events, isCovered }: CellJobs, first: number, last: number): ReadonlyMap<string, number> {
  const carried = new Map<string, number>();
  for (const { columns, from, until } of events) {
    for (let at = from; at < until; at++) {
      const [week, component] = [columns.failedWeek[at] ?? 0, columns.components[columns.failed[at] ?? -1]];
      if (component === undefined || week < first || week > last) continue;
      if (isCovered(week, columns.inServiceWeek[at] ?? 0))
        carried.set(component, (carried.get(component) ?? 0) + (columns.jobs[at] ?? 0));
    }
  }
  return carried;
}
