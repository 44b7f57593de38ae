import { normalQuantile } from "../normal";
import { type MeanCumulative, meanCumulativeFunction } from "./mean-cumulative-function";
import type { RecurrenceVariance } from "./recurrence-variance";
import type { UnitHistory } from "./unit-history";

/**
 * How many more events per unit the first group has had by chosen ages than the second, with limits at each age.
 * Where the limits exclude 0 the groups differ at that age; many ages are many tests, so choose few.
 * @param ages        ages at which to compare, 0 or more
 * @param confidence  two-sided level in (0, 1); no default
 * @param variance    as in `meanCumulativeFunction`; no default
 * @returns one entry per age: the difference in events (or cost) per unit; `beyond-data` when a group was not watched so long;
 *          `no-limits` when neither group had an event or a variance could not be estimated
 * @throws RangeError for an argument outside its range
 * Source: Doganaksoy and Nelson (1998), Lifetime Data Analysis 4, 117-133.
 * Checked: tests/statistics/recurrence/compare-recurrence.test.ts.
 */
export function recurrenceDifference(
  first: readonly UnitHistory[],
  second: readonly UnitHistory[],
  { ages, confidence, variance }: DifferenceOptions,
): RecurrenceDifference[] {
  const options = { confidence, variance, interval: "plain" } as const;
  const [one, two] = [meanCumulativeFunction(first, options), meanCumulativeFunction(second, options)];
  const multiplier = -normalQuantile((1 - confidence) / 2);
  return ages.map((age, i) => {
    if (!(age >= 0 && age < Number.POSITIVE_INFINITY)) {
      throw new RangeError(`ages[${i}] must be a finite age, 0 or more; it is ${age}`);
    }
    const [a, b] = [levelAt(one, age), levelAt(two, age)];
    if (a === "beyond-data" || b === "beyond-data") return { kind: "beyond-data", age };
    const difference = a.mean - b.mean;
    const standardError = Math.hypot(a.error, b.error);
    if (!(standardError > 0)) return { kind: "no-limits", age, difference };
    const arm = multiplier * standardError;
    return { kind: "difference", age, difference, standardError, low: difference - arm, high: difference + arm };
  });
}

export interface DifferenceOptions {
  readonly ages: readonly number[];
  readonly confidence: number;
  readonly variance: RecurrenceVariance;
}

export type RecurrenceDifference =
  | {
      readonly kind: "difference";
      readonly age: number;
      readonly difference: number;
      readonly standardError: number;
      readonly low: number;
      readonly high: number;
    }
  | { readonly kind: "no-limits"; readonly age: number; readonly difference: number }
  | { readonly kind: "beyond-data"; readonly age: number };

/** Mean and error at an age; an error that cannot be estimated spoils the sum, and is caught there as not above 0. */
function levelAt(curve: MeanCumulative, age: number): { mean: number; error: number } | "beyond-data" {
  if (curve.kind === "no-exposure" || age > curve.lastAge) return "beyond-data";
  const step = curve.kind === "curve" ? curve.steps.findLast((one) => one.age <= age) : undefined;
  if (step === undefined) return { mean: 0, error: 0 };
  return { mean: step.mean, error: step.limits.kind === "limits" ? step.limits.standardError : Number.NaN };
}
