/** Middle value; the lower of two. Endless where more than half are. */
export function median(values: readonly number[]): number {
  return values.toSorted((a, b) => a - b)[Math.floor((values.length - 1) / 2)] ?? Number.NaN;
}
