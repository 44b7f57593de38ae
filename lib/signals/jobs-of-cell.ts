import type { CellWeeks } from "./cell-weeks";
import type { LineEvent } from "./signal-record";

interface CellJobs {
  readonly events: readonly LineEvent[];
  /** Whether there is an expectation in the week and at the age of an event. */
  readonly isCovered: (event: LineEvent) => boolean;
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
  const late: LineEvent[] = [];
  for (const event of events) {
    if (!isCovered(event)) continue;
    const { failedWeek, knownWeek } = event;
    const place = failedWeek - firstWeek;
    observed[place] = (observed[place] ?? 0) + event.jobs;
    if (knownWeek <= failedWeek) continue;
    late.push(event);
    lastKnown[place] = Math.max(lastKnown[place] ?? 0, knownWeek);
  }
  return {
    unknownAt: (week, seenAt) => {
      if ((lastKnown[week - firstWeek] ?? 0) <= seenAt) return 0;
      let unknown = 0;
      for (const { failedWeek, knownWeek, jobs } of late)
        if (failedWeek === week && knownWeek > seenAt) unknown += jobs;
      return unknown;
    },
    carrying: (component, from, to) => {
      let carried = 0;
      for (const event of events)
        if (event.failed === component && event.failedWeek >= from && event.failedWeek <= to && isCovered(event))
          carried += event.jobs;
      return carried;
    },
  };
}
