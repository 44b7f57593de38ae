import type { DayNumber } from "@/lib/calendar/day-number";
import { type DelayCount, type EstimatedDelay, reportingDelay } from "@/lib/statistics/delay/reporting-delay";

/** Delays are learnt from jobs opened in this many days before the last closed one: what was usual years ago is not. */
export const delayLearningDays = 365;
/** Under this many jobs a distribution of delays would be a guess. */
export const fewestDelayJobs = 30;
/** Loads on fewer days than this, after the first, tell nothing regular. */
export const fewestRegularLoads = 4;

/** Closed jobs by the days on which they were opened, closed and loaded. */
export interface DelayRecord {
  /** Last day on which any job was closed: later ones are not known yet. Undefined without jobs. */
  readonly lastClosedOn: DayNumber | undefined;
  readonly opened: readonly OpenedJobs[];
  /** Closed jobs of the same time without the day of the customer's call: they cannot be placed. */
  readonly withoutOpening: number;
  readonly loads: LoadDays | undefined;
}

export interface OpenedJobs {
  readonly openedOn: DayNumber;
  readonly closedOn: DayNumber;
  /** Given only where the job was closed on or after the day of the first load, so that it could be loaded in time. */
  readonly loadedOn: DayNumber | undefined;
  readonly jobs: number;
}

/** Days on which jobs were loaded. */
export interface LoadDays {
  readonly firstOn: DayNumber;
  readonly lastOn: DayNumber;
  readonly days: number;
}

export interface ReportingDelays {
  readonly lastClosedOn: DayNumber;
  readonly openedToClosed: LearntDelay;
  readonly closedToLoaded: LoadDelay;
  readonly withoutOpening: number;
}

export type LearntDelay =
  | { readonly kind: "learnt"; readonly jobs: number; readonly delay: EstimatedDelay }
  | { readonly kind: "too-few-jobs"; readonly jobs: number };

export type LoadDelay =
  | { readonly kind: "learnt"; readonly jobs: number; readonly loads: LoadDays; readonly delay: EstimatedDelay }
  | { readonly kind: "not-enough-regular-loads"; readonly jobs: number; readonly loads: LoadDays | undefined };

/**
 * How long jobs take from the customer's call to closing, and from closing to the load that brought them here. Jobs
 * called in lately are on record only if they were quick, and the estimate allows for that (right truncation).
 * A load of past years is no delay: the way from closing to loading is learnt only from jobs closed on or after the
 * day of the first load, and only where loads have come on enough days since.
 * @returns undefined where no job is closed
 * Checked: tests/failures/reporting-delay.test.ts, by hand; tests/db/reporting-delay.test.ts, against the law that
 *   the invented company's delays were drawn from.
 */
export function reportingDelays({
  lastClosedOn,
  opened,
  withoutOpening,
  loads,
}: DelayRecord): ReportingDelays | undefined {
  if (lastClosedOn === undefined) return undefined;
  const learntFrom = lastClosedOn - delayLearningDays;
  const closing = opened
    .filter(({ openedOn, closedOn }) => openedOn > learntFrom && closedOn <= lastClosedOn)
    .map(({ openedOn, closedOn, jobs }) => ({
      delay: closedOn - openedOn,
      longestSeen: lastClosedOn - openedOn,
      count: jobs,
    }));
  return {
    lastClosedOn,
    openedToClosed: learntDelay(closing),
    closedToLoaded: loadDelay(opened, loads),
    withoutOpening,
  };
}

function learntDelay(counts: readonly DelayCount[]): LearntDelay {
  const jobs = counts.reduce((sum, { count }) => sum + count, 0);
  const delay = reportingDelay(counts);
  if (jobs < fewestDelayJobs || delay.kind === "no-reports") return { kind: "too-few-jobs", jobs };
  return { kind: "learnt", jobs, delay };
}

function loadDelay(opened: readonly OpenedJobs[], loads: LoadDays | undefined): LoadDelay {
  const counts = opened.flatMap(({ closedOn, loadedOn, jobs }): DelayCount[] =>
    loadedOn === undefined || loads === undefined || loadedOn < closedOn
      ? []
      : [{ delay: loadedOn - closedOn, longestSeen: loads.lastOn - closedOn, count: jobs }],
  );
  const learnt = learntDelay(counts);
  if (learnt.kind === "too-few-jobs" || loads === undefined || loads.days <= fewestRegularLoads)
    return { kind: "not-enough-regular-loads", jobs: learnt.jobs, loads };
  return { ...learnt, loads };
}
