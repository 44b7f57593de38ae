/**
 * Lives that were watched for part of the time: the one input of every survival curve and life distribution here.
 * A life is at risk of failing at age t when `entry < t <= exit`; entry 0 means watched from the start, so such
 * a life is at risk at age 0 too. Entering later than 0 is left truncation: failures before `entry` would not
 * have been seen, so the life says nothing about them.
 */
export interface LifeRow {
  /** Age at which watching began: 0 or more, any time unit, the same for all rows. */
  readonly entry: number;
  /** Age at which watching ended; not below entry. A life lost at its own entry age was never at risk and adds nothing. */
  readonly exit: number;
  /** True when the life ended in failure at `exit`; false when it was merely no longer watched (right censoring). */
  readonly event: boolean;
  /** How many lives share this row: whole number, 0 or more. */
  readonly count: number;
}

/** The same as rows, one typed array per column; all four have one length; `event` holds 0 or 1. */
export interface LifeColumns {
  readonly entry: Float64Array;
  readonly exit: Float64Array;
  readonly event: Uint8Array;
  readonly count: Float64Array;
}

type RowVisitor = (entry: number, exit: number, event: boolean, count: number) => void;

/**
 * Hands every row that was at risk to `visit`, after checking it.
 * @throws RangeError naming the row and the field that cannot be
 */
export function visitLives(lives: readonly LifeRow[] | LifeColumns, visit: RowVisitor): void {
  if (!("entry" in lives)) {
    lives.forEach((row, index) => {
      visitOne(index, row.entry, row.exit, row.event, row.count, visit);
    });
    return;
  }
  const { entry, exit, event, count } = lives;
  if (exit.length !== entry.length || event.length !== entry.length || count.length !== entry.length) {
    throw new RangeError(
      `entry, exit, event and count must have one length; they have ${entry.length}, ${exit.length}, ${event.length} and ${count.length}`,
    );
  }
  for (let i = 0; i < entry.length; i++) {
    visitOne(i, entry[i] ?? 0, exit[i] ?? 0, event[i] === 1, count[i] ?? 0, visit);
  }
}

function visitOne(index: number, entry: number, exit: number, event: boolean, count: number, visit: RowVisitor): void {
  if (!(entry >= 0 && entry < Number.POSITIVE_INFINITY)) {
    throw new RangeError(`rows[${index}].entry must be a finite age, 0 or more; it is ${entry}`);
  }
  if (!(exit >= entry && exit < Number.POSITIVE_INFINITY)) {
    throw new RangeError(`rows[${index}].exit must be a finite age, not below its entry ${entry}; it is ${exit}`);
  }
  if (!Number.isSafeInteger(count) || count < 0) {
    throw new RangeError(`rows[${index}].count must be a whole number, 0 or more; it is ${count}`);
  }
  if (count === 0) return;
  if (exit === entry && entry > 0) {
    if (!event) return;
    throw new RangeError(
      `rows[${index}] fails at age ${exit}, the age at which it entered: it was not yet at risk; let it enter earlier or leave it out`,
    );
  }
  visit(entry, exit, event, count);
}
