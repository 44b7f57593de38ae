import type { LeadCell } from "./signal-run";
import { type WeekNumber, weeksPerBlock } from "./weeks";

/** Failures and expectation of the cell that leads a signal, over some of its weeks. */
export interface PeriodCounts {
  readonly from: WeekNumber;
  /** First week no more. */
  readonly until: WeekNumber;
  readonly observed: number;
  readonly expected: number;
}

/** Counts from one week up to but not including another; weeks outside the record hold nothing. */
export function countsBetween(lead: LeadCell, from: WeekNumber, until: WeekNumber): PeriodCounts {
  let [observed, expected] = [0, 0];
  for (let week = Math.max(from, lead.firstWeek); week < until; week++) {
    const mean = lead.weeklyExpected[week - lead.firstWeek] ?? 0;
    if (!(mean > 0)) continue;
    observed += lead.weeklyObserved[week - lead.firstWeek] ?? 0;
    expected += mean;
  }
  return { from, until, observed, expected };
}

/** The last `count` quarters of 13 weeks up to the end of the record, oldest first. */
export function lastQuarters(lead: LeadCell, count: number): PeriodCounts[] {
  const end = lead.firstWeek + lead.weeklyExpected.length;
  return Array.from({ length: count }, (_, i) =>
    countsBetween(lead, end - weeksPerBlock * (count - i), end - weeksPerBlock * (count - i - 1)),
  ).filter(({ expected }) => expected > 0);
}
