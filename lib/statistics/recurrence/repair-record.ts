/** Repairs of one system watched from age 0, for trend tests and the power law. */
export interface RepairRecord {
  /** Age at which watching ended, above 0. */
  readonly end: number;
  /** Ages of repair, above 0 and not above end, any order. */
  readonly repairs: readonly number[];
  /** Watching stopped at an age set beforehand, or at the last repair (then the largest repair age must be `end`). */
  readonly stoppedBy: "time" | "failure";
}

/** What trend statistics need: repairs that were free to fall anywhere before the end (the one that ended it was not). */
export interface FreeRepairs {
  readonly end: number;
  readonly repairs: readonly number[];
}

/** @throws RangeError naming the record that cannot be */
export function freeRepairs(records: readonly RepairRecord[]): FreeRepairs[] {
  return records.map(({ end, repairs, stoppedBy }, i) => {
    if (!(end > 0 && end < Number.POSITIVE_INFINITY)) {
      throw new RangeError(`records[${i}].end must be a finite age above 0; it is ${end}`);
    }
    repairs.forEach((age, j) => {
      if (!(age > 0 && age <= end)) {
        throw new RangeError(`records[${i}].repairs[${j}] must lie above 0 and not above ${end}; it is ${age}`);
      }
    });
    if (stoppedBy === "time") return { end, repairs };
    const last = repairs.indexOf(end);
    if (last < 0)
      throw new RangeError(`records[${i}] stopped by failure, so its last repair must be at its end ${end}`);
    return { end, repairs: repairs.filter((_, j) => j !== last) };
  });
}
