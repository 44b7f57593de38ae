/**
 * Derivative of log Γ, for x above 0: climbs to 12 by the recurrence, then the asymptotic series.
 * Source: DLMF 5.5.2 and 5.11.2. Checked: tests/statistics/special/log-gamma.test.ts.
 */
export function digamma(x: number): number {
  let climbed = 0;
  let at = x;
  while (at < 12) {
    climbed -= 1 / at;
    at += 1;
  }
  const square = 1 / (at * at);
  const series = SERIES.reduceRight((sum, coefficient) => (sum + coefficient) * square, 0);
  return climbed + Math.log(at) - 0.5 / at - series;
}

/** B(2k) / (2k). */
const SERIES = [1 / 12, -1 / 120, 1 / 252, -1 / 240, 1 / 132, -691 / 32760, 1 / 12];
