/**
 * P-values adjusted for having made many tests at once, in the order given. Reject where the adjusted value is at
 * or below the level.
 * @param pValues each in 0..1, any order
 * @param method  "benjamini-hochberg" controls the share of false findings among the findings (q-values) for
 *   independent or positively dependent tests, "benjamini-yekutieli" for any dependence; "bonferroni", "holm" and
 *   "hochberg" control the chance of even one false finding
 * @returns one value per p-value, at most 1; adjusted values never reverse the order of the p-values
 * @throws RangeError for a p-value outside 0..1
 * Source: Benjamini & Hochberg (1995), JRSS B 57, 289-300; Benjamini & Yekutieli (2001), Annals of Statistics 29,
 *   1165-1188; Hochberg (1988), Biometrika 75, 800-802; Holm (1979), Scandinavian Journal of Statistics 6, 65-70.
 * Checked: tests/statistics/multiplicity.test.ts (cases H01, H02) and against R p.adjust.
 */
export function adjustedPValues(pValues: readonly number[], method: AdjustmentMethod): readonly number[] {
  pValues.forEach((p, i) => {
    if (!(p >= 0 && p <= 1)) throw new RangeError(`pValues[${i}] must lie in 0..1; it is ${p}`);
  });
  const count = pValues.length;
  if (method === "bonferroni") return pValues.map((p) => Math.min(1, count * p));
  const ascending = pValues.map((p, index) => ({ p, index })).sort((a, b) => a.p - b.p);
  const scaled = ascending.map(({ p }, i) => p * factor({ method, rank: i + 1, count }));
  const monotone = method === "holm" ? runningMaximum(scaled) : runningMinimumFromEnd(scaled);
  const adjusted = new Array<number>(count).fill(1);
  ascending.forEach(({ index }, i) => {
    adjusted[index] = Math.min(1, monotone[i] ?? 1);
  });
  return adjusted;
}

export type AdjustmentMethod = "benjamini-hochberg" | "benjamini-yekutieli" | "bonferroni" | "holm" | "hochberg";

interface FactorInput {
  readonly method: Exclude<AdjustmentMethod, "bonferroni">;
  readonly rank: number;
  readonly count: number;
}

function factor({ method, rank, count }: FactorInput): number {
  switch (method) {
    case "benjamini-hochberg":
      return count / rank;
    case "benjamini-yekutieli":
      return (count / rank) * harmonic(count);
    case "holm":
    case "hochberg":
      return count - rank + 1;
  }
}

function harmonic(count: number): number {
  let sum = 0;
  for (let i = count; i >= 1; i--) sum += 1 / i;
  return sum;
}

function runningMaximum(values: readonly number[]): readonly number[] {
  let highest = 0;
  return values.map((value) => {
    highest = Math.max(highest, value);
    return highest;
  });
}

function runningMinimumFromEnd(values: readonly number[]): readonly number[] {
  let lowest = 1;
  return values
    .toReversed()
    .map((value) => {
      lowest = Math.min(lowest, value);
      return lowest;
    })
    .toReversed();
}
