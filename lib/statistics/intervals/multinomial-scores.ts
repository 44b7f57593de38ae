import { chiSquareUpperQuantile } from "../chi-square-quantile";
import { requireProbability, requireWholeNumber } from "../require";
import type { Interval } from "./interval";
import { scoreLimits } from "./wilson";

/**
 * Intervals for all shares of one whole, each a score (Wilson) interval with its own critical value.
 * @param counts     one whole number per class, 0 or more; at least two classes and one event
 * @param confidence two-sided level in (0, 1): of each share alone for "wilson", of all together for the others
 * @param method     "goodman" spends the doubt evenly over the classes; "quesenberry-hurst" is wider and older
 * @returns one interval per class, in the order given
 * @throws RangeError for an argument outside its range
 * Source: Goodman (1965), Technometrics 7, 247-254; Quesenberry & Hurst (1964), Technometrics 6, 191-195.
 * Checked: tests/statistics/shares.test.ts (cases B05, B07).
 */
export function multinomialScores({ counts, confidence, method }: MultinomialScores): readonly Interval[] {
  const trials = requireClasses(counts);
  requireProbability("confidence", confidence);
  const chiSquare = criticalValue({ classes: counts.length, doubt: 1 - confidence, method });
  return counts.map((count) => {
    const share = count / trials;
    const [low, high] = scoreLimits({ share, trials, chiSquare });
    return { point: share, low: Math.max(0, low), high: Math.min(1, high) };
  });
}

export interface MultinomialScores {
  readonly counts: readonly number[];
  readonly confidence: number;
  readonly method: "wilson" | "goodman" | "quesenberry-hurst";
}

/** Total of the counts, after checking that they describe at least two classes and one event. */
export function requireClasses(counts: readonly number[]): number {
  if (counts.length < 2) throw new RangeError(`counts must hold at least two classes; it holds ${counts.length}`);
  counts.forEach((count, i) => {
    requireWholeNumber(`counts[${i}]`, count);
  });
  const total = counts.reduce((sum, count) => sum + count, 0);
  if (total === 0) throw new RangeError("counts must hold at least one event; all are 0");
  return total;
}

function criticalValue({
  classes,
  doubt,
  method,
}: {
  classes: number;
  doubt: number;
  method: MultinomialScores["method"];
}) {
  switch (method) {
    case "wilson":
      return chiSquareUpperQuantile(doubt, 1);
    case "goodman":
      return chiSquareUpperQuantile(doubt / classes, 1);
    case "quesenberry-hurst":
      return chiSquareUpperQuantile(doubt, classes - 1);
  }
}
