import { todayIn } from "@/app/_clock/today";
import type { Reader } from "@/db/database-types";
import { loadDelayRecord } from "@/db/queries/reporting-delay";
import { loadShop } from "@/db/queries/shop";
import { type ReportingDelays, reportingDelays } from "@/lib/failures/reporting-delay";
import { type RecentCorrection, recentCorrection } from "@/lib/failures/reporting-delay-correction";
import { type RecentWeek, recentWeekCounts } from "@/lib/failures/reporting-delay-weeks";

export interface DelayView {
  readonly level: number;
  readonly delays: ReportingDelays;
  /** All closed jobs of the weeks that are not complete yet. */
  readonly recent: RecentCorrection;
  readonly weeks: readonly RecentWeek[];
}

/** Undefined where no job is closed. */
export async function loadDelayView(db: Reader): Promise<DelayView | undefined> {
  const { timeZone } = await loadShop(db);
  const record = await loadDelayRecord(db, { today: todayIn(timeZone), timeZone });
  const delays = reportingDelays(record);
  if (delays === undefined) return undefined;
  const { lastClosedOn, openedToClosed } = delays;
  const opened = new Map<number, number>();
  for (const { openedOn, jobs } of record.opened) opened.set(openedOn, (opened.get(openedOn) ?? 0) + jobs);
  return {
    level,
    delays,
    recent: recentCorrection(delays, { from: undefined, until: lastClosedOn + 1, opened, level }),
    weeks:
      openedToClosed.kind === "learnt"
        ? recentWeekCounts(record, { delay: openedToClosed.delay, lastClosedOn, level })
        : [],
  };
}

const level = 0.95;
