/**
 * What happened, again and again, to one unit while it was watched; the input of everything in this folder.
 * A unit is at risk at age t when `entry < t <= exit`; entry 0 means from the start, age 0 included.
 */
export interface UnitHistory {
  /** Age at which watching began: 0 or more, any time unit, the same for all. */
  readonly entry: number;
  /** Age at which watching ended; not below entry. */
  readonly exit: number;
  /** How many units share exactly this history (mostly 1, or a large number of units without events). */
  readonly count: number;
  /** Events in any order; two on the same age both count. Each lies while the unit is at risk. */
  readonly events: readonly RecurringEvent[];
}

export interface RecurringEvent {
  readonly age: number;
  /** 1 to count events; a cost or another amount, 0 or more, to add those up instead. */
  readonly size: number;
}

/** @throws RangeError naming the history and the field that cannot be */
export function requireHistories(histories: readonly UnitHistory[]): void {
  histories.forEach(({ entry, exit, count, events }, unit) => {
    if (!(entry >= 0 && entry < Number.POSITIVE_INFINITY)) {
      throw new RangeError(`histories[${unit}].entry must be a finite age, 0 or more; it is ${entry}`);
    }
    if (!(exit >= entry && exit < Number.POSITIVE_INFINITY)) {
      throw new RangeError(`histories[${unit}].exit must be a finite age, not below its entry ${entry}; it is ${exit}`);
    }
    if (!Number.isSafeInteger(count) || count < 0) {
      throw new RangeError(`histories[${unit}].count must be a whole number, 0 or more; it is ${count}`);
    }
    events.forEach(({ age, size }, index) => {
      const place = `histories[${unit}].events[${index}]`;
      if (!(age <= exit && (entry === 0 ? age >= 0 : age > entry))) {
        throw new RangeError(`${place}.age must lie while the unit is watched, ${entry} to ${exit}; it is ${age}`);
      }
      if (!(size >= 0 && size < Number.POSITIVE_INFINITY)) {
        throw new RangeError(`${place}.size must be finite, 0 or more; it is ${size}`);
      }
    });
  });
}
