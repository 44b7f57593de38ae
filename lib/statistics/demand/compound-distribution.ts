import { requireProbability, requireWholeNumber } from "../require";
import type { CountDistribution } from "./count-distribution";

/**
 * The distribution of a sum of so many whole numbers, drawn alike and apart from each other, where how many is itself
 * a count: pieces, where repairs are counted and each takes some.
 * @param counts distribution of how many are added
 * @param each   chance of each number, 1 or more; the chances sum to 1
 * @throws RangeError for a number below 1 or a chance outside 0..1
 * Source: by definition, conditioned on the count, in the nested form of Horner.
 * Checked: tests/statistics/demand/compound-distribution.test.ts, by hand and by its mean and variance.
 */
export function compoundDistribution(
  counts: CountDistribution,
  each: readonly { readonly each: number; readonly chance: number }[],
): CountDistribution {
  for (const [i, one] of each.entries()) {
    requireWholeNumber(`each[${i}].each`, one.each);
    if (one.each < 1) throw new RangeError(`each[${i}].each must be 1 or more; it is ${one.each}`);
    if (one.chance !== 1) requireProbability(`each[${i}].chance`, one.chance);
  }
  const [only] = each;
  if (only !== undefined && each.length === 1) return stretched(counts, only.each);
  const largest = Math.max(...each.map((one) => one.each));
  let sum: CountDistribution = Float64Array.of(counts.at(-1) ?? 1);
  for (let more = counts.length - 2; more >= 0; more--) {
    const next = new Float64Array(sum.length + largest);
    for (const one of each)
      for (let k = 0; k < sum.length; k++) next[k + one.each] = (next[k + one.each] ?? 0) + one.chance * (sum[k] ?? 0);
    next[0] = (next[0] ?? 0) + (counts[more] ?? 0);
    sum = next;
  }
  return sum;
}

/** Every count so many times as large. */
export function stretched(counts: CountDistribution, times: number): CountDistribution {
  if (times === 1) return counts;
  const longer = new Float64Array((counts.length - 1) * times + 1);
  for (const [k, chance] of counts.entries()) longer[k * times] = chance;
  return longer;
}
