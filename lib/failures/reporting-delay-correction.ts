import type { DayNumber } from "@/lib/calendar/day-number";
import { type CorrectedCount, correctedCount, type ReportedPeriod } from "@/lib/statistics/delay/corrected-count";
import type { EstimatedDelay } from "@/lib/statistics/delay/reporting-delay";
import type { ReportingDelays } from "./reporting-delay";

/** Weeks are taken together until they hold this many jobs: fewer would make a wild guess of a single quick job. */
export const fewestJobsTogether = 10;
/** A week counts as complete once this share of its jobs is on record. */
export const completeShare = 0.99;
/** Longest time looked back, in weeks; slower jobs than this are rare and told by the distribution itself. */
export const mostRecentWeeks = 26;

const daysPerWeek = 7;

export type RecentCorrection =
  | {
      readonly kind: "corrected";
      readonly weeks: number;
      readonly count: Extract<CorrectedCount, { kind: "corrected" }>;
    }
  /** Everything asked about is old enough to be complete. */
  | { readonly kind: "complete" }
  | { readonly kind: "too-recent"; readonly weeks: number; readonly events: number }
  | { readonly kind: "not-learnt"; readonly jobs: number };

export interface RecentQuestion {
  /** Calendar days asked about: from (undefined: as far back as there are any) up to but not including until. */
  readonly from: DayNumber | undefined;
  readonly until: DayNumber;
  /** Jobs on record by the day on which they were opened; days without any may be absent. */
  readonly opened: ReadonlyMap<DayNumber, number>;
  readonly level: number;
}

/**
 * What the last weeks of a period will come to once their open jobs are closed. The weeks run back from the last day on
 * which any job was closed, as far as it takes for 99 in 100 jobs to be closed.
 * All jobs are held to take equally long, whatever their component: the delays of few jobs cannot be told apart.
 * Checked: tests/failures/reporting-delay.test.ts.
 */
export function recentCorrection(delays: ReportingDelays, question: RecentQuestion): RecentCorrection {
  const { openedToClosed, lastClosedOn } = delays;
  if (openedToClosed.kind === "too-few-jobs") return { kind: "not-learnt", jobs: openedToClosed.jobs };
  const { delay } = openedToClosed;
  const all = recentWeeks(delay);
  const periods = Array.from({ length: all }, (_, week) => periodOf(week, lastClosedOn, question)).filter(
    ({ ages }) => ages.length > 0,
  );
  if (periods.length === 0) return { kind: "complete" };
  const count = correctedCount({ periods, delay, fewestTogether: fewestJobsTogether, level: question.level });
  if (count.kind === "too-recent") return { kind: "too-recent", weeks: periods.length, events: count.events };
  return { kind: "corrected", weeks: periods.length, count };
}

/** Whole weeks from the last day back to where a week is complete. */
export function recentWeeks(delay: EstimatedDelay): number {
  const days = daysUntilShare(delay, completeShare);
  return Math.min(Math.max(Math.ceil((days + 1) / daysPerWeek), 1), mostRecentWeeks);
}

/** Days within which at least this share is reported. */
export function daysUntilShare({ steps }: EstimatedDelay, share: number): number {
  return steps.find(({ within }) => within >= share)?.delay ?? steps.length;
}

function periodOf(week: number, lastDay: DayNumber, { from, until, opened }: RecentQuestion): ReportedPeriod {
  const ages: number[] = [];
  let reports = 0;
  for (let age = week * daysPerWeek; age < (week + 1) * daysPerWeek; age++) {
    const on = lastDay - age;
    if (on >= until || (from !== undefined && on < from)) continue;
    ages.push(age);
    reports += opened.get(on) ?? 0;
  }
  return { ages, reports };
}
