import type { DayNumber } from "@/lib/calendar/day-number";
import { type CorrectedCount, correctedCount } from "@/lib/statistics/delay/corrected-count";
import type { EstimatedDelay } from "@/lib/statistics/delay/reporting-delay";
import type { DelayRecord } from "./reporting-delay";
import { recentWeeks } from "./reporting-delay-correction";

/** One of the last weeks by itself. */
export interface RecentWeek {
  readonly firstOn: DayNumber;
  readonly lastOn: DayNumber;
  readonly count: CorrectedCount;
}

/** All closed jobs of each week that is not complete yet, newest first, each with what it will come to. */
export function recentWeekCounts(
  { opened }: DelayRecord,
  {
    delay,
    lastClosedOn,
    level,
  }: { readonly delay: EstimatedDelay; readonly lastClosedOn: DayNumber; readonly level: number },
): RecentWeek[] {
  return Array.from({ length: recentWeeks(delay) }, (_, week) => {
    const lastOn = lastClosedOn - 7 * week;
    const firstOn = lastOn - 6;
    const reports = opened.reduce(
      (sum, { openedOn, jobs }) => sum + (openedOn >= firstOn && openedOn <= lastOn ? jobs : 0),
      0,
    );
    const ages = Array.from({ length: 7 }, (_day, day) => 7 * week + day);
    return {
      firstOn,
      lastOn,
      count: correctedCount({ periods: [{ ages, reports }], delay, fewestTogether: 0, level }),
    };
  });
}
