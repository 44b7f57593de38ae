/**
 * Lives whose failure age is known only within bounds: the failure lies in (after, by].
 * `after` 0 is left censoring (already failed when first looked at); `by` Infinity is right censoring (still sound
 * at `after`); `after` equal to `by` is a failure at exactly that age.
 */
export interface InspectionRow {
  /** Age at which watching began, 0 or more; failures before it would not have been seen. Not above `after`. */
  readonly entry: number;
  /** Largest age at which the life was known to be sound, 0 or more. */
  readonly after: number;
  /** Smallest age at which it was known to have failed; not below `after`; Infinity when it never was. */
  readonly by: number;
  /** How many lives share this row: whole number, 0 or more. */
  readonly count: number;
}

/** @throws RangeError naming the row and the field that cannot be */
export function requireInspectionRow(row: InspectionRow, index: number): void {
  const { entry, after, by, count } = row;
  if (!(entry >= 0 && entry < Number.POSITIVE_INFINITY)) {
    throw new RangeError(`rows[${index}].entry must be a finite age, 0 or more; it is ${entry}`);
  }
  if (!(after >= entry && after < Number.POSITIVE_INFINITY)) {
    throw new RangeError(`rows[${index}].after must be a finite age, not below its entry ${entry}; it is ${after}`);
  }
  if (!(by >= after)) {
    throw new RangeError(`rows[${index}].by must not be below its after ${after}; it is ${by}`);
  }
  if (by === after && entry === by && entry > 0) {
    throw new RangeError(`rows[${index}] fails at age ${by}, the age at which it entered: it was not yet at risk`);
  }
  if (!Number.isSafeInteger(count) || count < 0) {
    throw new RangeError(`rows[${index}].count must be a whole number, 0 or more; it is ${count}`);
  }
}
