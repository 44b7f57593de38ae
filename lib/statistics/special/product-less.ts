/**
 * n x − a with the rounding error of the product given back: where the product nearly equals a, that error is all that
 * would be wrong with the difference.
 * Source: the exact product of two doubles, Dekker (1971), Numerische Mathematik 18, 224-242, with Veltkamp's splitting.
 * @param n, x  below 1e150 in size, so that splitting does not overflow
 * Checked: tests/statistics/special/incomplete-beta.test.ts.
 */
export function productLess(n: number, x: number, a: number): number {
  const product = n * x;
  const [nHigh, xHigh] = [highHalf(n), highHalf(x)];
  const [nLow, xLow] = [n - nHigh, x - xHigh];
  const error = nLow * xLow - (product - nHigh * xHigh - nLow * xHigh - nHigh * xLow);
  return product - a + error;
}

/** The leading 26 bits. */
function highHalf(value: number): number {
  const shifted = 134_217_729 * value;
  return shifted - (shifted - value);
}
