/** The largest whole number that divides both; of 0 and another number the other. Euclid. */
export function commonDivisor(a: number, b: number): number {
  return b === 0 ? a : commonDivisor(b, a % b);
}
