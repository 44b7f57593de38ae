/**
 * Checks on arguments, shared by the whole folder.
 * `lib/statistics` is numbers in, numbers out: an argument outside its range is a bug in the caller and throws.
 * It knows nothing of appliances, jobs or parts, and imports nothing.
 */
export function requireWholeNumber(name: string, value: number): void {
  if (!Number.isSafeInteger(value) || value < 0) {
    throw new RangeError(`${name} must be a whole number, 0 or more; it is ${value}`);
  }
}

/** Above 0 and finite. */
export function requirePositive(name: string, value: number): void {
  if (!(value > 0 && value < Number.POSITIVE_INFINITY)) {
    throw new RangeError(`${name} must be a finite number above 0; it is ${value}`);
  }
}

/** 0 or more and finite. */
export function requireNonNegative(name: string, value: number): void {
  if (!(value >= 0 && value < Number.POSITIVE_INFINITY)) {
    throw new RangeError(`${name} must be a finite number, 0 or more; it is ${value}`);
  }
}

/** Strictly between 0 and 1: the ends have no quantile and no interval. */
export function requireProbability(name: string, value: number): void {
  if (!(value > 0 && value < 1)) {
    throw new RangeError(`${name} must lie strictly between 0 and 1; it is ${value}`);
  }
}

/** Any finite number. */
export function requireFinite(name: string, value: number): void {
  if (!Number.isFinite(value)) {
    throw new RangeError(`${name} must be a finite number; it is ${value}`);
  }
}
