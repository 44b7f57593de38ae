/**
 * a log(a / x) + x − a, the distance between a count and its mean, without the cancellation that ruins the
 * plain formula when the two are close. Both above 0.
 * Source: C. Loader (2000), Fast and accurate computation of binomial probabilities.
 * Checked: tests/statistics/special/incomplete-gamma.test.ts.
 */
export function deviance(a: number, x: number): number {
  return devianceOf({ a, x, difference: x - a });
}

/** The same where the caller can give x − a more exactly than their difference does. */
export function devianceOf({ a, x, difference }: { a: number; x: number; difference: number }): number {
  const excess = difference / a;
  if (Math.abs(excess) > 0.5) return difference - a * Math.log(x / a);
  // e − log(1 + e) with r = e / (2 + e) is r e − 2 (r³/3 + r⁵/5 + …): every term small where e is small.
  const r = excess / (2 + excess);
  const square = r * r;
  let power = 2 * r * square;
  let sum = r * excess;
  for (let k = 3; k < 60; k += 2) {
    const next = sum - power / k;
    if (next === sum) break;
    sum = next;
    power *= square;
  }
  return a * sum;
}
