import type { SignalRecord } from "./signal-record";
import type { WeekNumber } from "./weeks";

/** The weeks of a record from one on: units that are in service then, and calls of those weeks. */
export function recordSince(record: SignalRecord, from: WeekNumber): SignalRecord {
  return {
    ...record,
    firstWeek: from,
    cohorts: record.cohorts
      .map((cohort) => {
        const before = cohort.changes.filter(([week]) => week <= from).reduce((sum, [, units]) => sum + units, 0);
        const after = cohort.changes.filter(([week]) => week > from);
        return { ...cohort, changes: before === 0 ? after : [[from, before] as const, ...after] };
      })
      .filter(({ changes }) => changes.length > 0),
    jobs: record.jobs.filter(({ failedWeek, knownWeek }) => failedWeek >= from && knownWeek <= record.lastWeek),
  };
}
