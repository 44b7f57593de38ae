import { requireNonNegative, requirePositive, requireWholeNumber } from "../require";

/**
 * Upper CUSUM chart of counts: adds up what exceeds a reference value and signals when the sum reaches its
 * threshold. A slow, steady rise shows here long before any single period looks unusual.
 * @param counts     one whole number per period, in time order
 * @param references one value per period, 0 or more; where the exposure changes, cusumReference of each period
 * @param threshold  above 0, in events
 * @param start      sum before the first period, from 0 up to below the threshold; half of it is the usual head start
 * @returns the sum after each period, whether it signals, and where the run now standing began: the first period
 *   after the sum was last at 0. The chart does not restart itself after a signal.
 * @throws RangeError for an argument outside its range or arrays of different length
 * Source: Lucas (1985), Technometrics 27, 129-144; onset by Page (1954), Biometrika 41, 100-115.
 * Checked: tests/statistics/change.test.ts, by hand.
 */
export function poissonCusum({ counts, references, threshold, start }: CusumInput): readonly CusumPoint[] {
  requirePositive("threshold", threshold);
  requireNonNegative("start", start);
  if (references.length !== counts.length) {
    throw new RangeError(`references must hold one value per count (${counts.length}); it holds ${references.length}`);
  }
  let sum = start;
  let onset = 0;
  return counts.map((count, period) => {
    const reference = references[period] ?? 0;
    requireWholeNumber(`counts[${period}]`, count);
    requireNonNegative(`references[${period}]`, reference);
    sum = Math.max(0, sum + count - reference);
    // A sum within rounding of zero is zero: otherwise the onset would hang on the last digit of a reference.
    if (sum < 1e-12 * threshold) {
      sum = 0;
      onset = period + 1;
    }
    const signals = sum >= threshold * (1 - 1e-12);
    return sum === 0 ? { kind: "at-zero", sum, signals } : { kind: "running", sum, signals, onset };
  });
}

export interface CusumInput {
  readonly counts: readonly number[];
  readonly references: readonly number[];
  readonly threshold: number;
  readonly start: number;
}

export type CusumPoint =
  | { readonly kind: "at-zero"; readonly sum: number; readonly signals: boolean }
  | { readonly kind: "running"; readonly sum: number; readonly signals: boolean; readonly onset: number };

/**
 * Reference value between an acceptable mean and one that should be found: the one that makes the CUSUM a
 * likelihood-ratio test. Equal to expected × (ratio − 1) / log ratio.
 * @param expected mean of the period while nothing is wrong, above 0
 * @param ratio    how many times more is to be found quickly, above 1
 */
export function cusumReference({ expected, ratio }: { readonly expected: number; readonly ratio: number }): number {
  requirePositive("expected", expected);
  if (!(ratio > 1 && Number.isFinite(ratio))) throw new RangeError(`ratio must be above 1; it is ${ratio}`);
  return (expected * (ratio - 1)) / Math.log(ratio);
}
