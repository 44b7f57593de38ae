/**
 * Expected number of failures by age where each failure starts a new life: the renewal function of a Weibull life of
 * scale 1, tabulated for ages up to `until` scales.
 * Source: Xie (1989), On the solution of renewal-type integral equations, Communications in Statistics 18, 281-293
 * (mid-point rule for the Stieltjes integral), from memory.
 * Checked: tests/synthetic-data/renewal.test.ts, by the exponential law, by the first life alone and by simulation.
 */
export function weibullRenewals(shape: number, until: number): (age: number) => number {
  if (!(shape > 0)) throw new RangeError(`shape: above 0 expected: ${shape}`);
  if (!(until > 0)) throw new RangeError(`until: above 0 expected: ${until}`);
  const step = until / intervals;
  const failed = (age: number) => -Math.expm1(-(age ** shape));
  const atEnd = Float64Array.from({ length: intervals + 1 }, (_, index) => failed(index * step));
  const atMiddle = Float64Array.from({ length: intervals + 1 }, (_, index) =>
    index === 0 ? 0 : failed((index - 0.5) * step),
  );
  const expected = new Float64Array(intervals + 1);
  for (let i = 1; i <= intervals; i++) {
    let sum = read(atEnd, i) - read(atMiddle, 1) * read(expected, i - 1);
    for (let j = 1; j < i; j++) sum += read(atMiddle, i - j + 1) * (read(expected, j) - read(expected, j - 1));
    expected[i] = sum / (1 - read(atMiddle, 1));
  }
  return (age) => interpolate(expected, age / step, shape);
}

const intervals = 1500;

/** Within a step the count grows as age^shape near 0 and nearly evenly elsewhere. */
function interpolate(values: Float64Array, position: number, shape: number): number {
  if (position <= 0) return 0;
  if (position >= intervals) throw new RangeError(`age: beyond the table: ${position / intervals} of its end`);
  const index = Math.floor(position);
  const part = index === 0 ? position ** shape : position - index;
  return read(values, index) + part * (read(values, index + 1) - read(values, index));
}

function read(values: Float64Array, index: number): number {
  return values[index] ?? 0;
}
