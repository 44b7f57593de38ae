import { requireFinite, requirePositive } from "../require";

/**
 * James-Stein shrinkage of several means of equal variance towards their average.
 * @param values       at least four, any unit
 * @param variance     of each value, above 0, in the unit squared
 * @param positivePart true never shrinks past the average (the factor stays at 0 or above)
 * @returns the average, the factor by which distances from it are kept, and the shrunken values in order; "all-equal"
 *   where the values do not differ and there is nothing to shrink
 * @throws RangeError for an argument outside its range
 * Source: Efron & Morris (1975), JASA 70, 311-319.
 * Checked: tests/statistics/multiplicity.test.ts (case H05).
 */
export function jamesStein({ values, variance, positivePart }: JamesSteinInput): JamesStein {
  if (values.length < 4) throw new RangeError(`values must hold at least four values; it holds ${values.length}`);
  values.forEach((value, i) => {
    requireFinite(`values[${i}]`, value);
  });
  requirePositive("variance", variance);
  const average = values.reduce((sum, value) => sum + value, 0) / values.length;
  const squares = values.reduce((sum, value) => sum + (value - average) ** 2, 0);
  if (squares === 0) return { kind: "all-equal", average };
  const plain = 1 - ((values.length - 3) * variance) / squares;
  const factor = positivePart ? Math.max(0, plain) : plain;
  return { kind: "shrunken", average, factor, values: values.map((value) => average + factor * (value - average)) };
}

export interface JamesSteinInput {
  readonly values: readonly number[];
  readonly variance: number;
  readonly positivePart: boolean;
}

export type JamesStein =
  | { readonly kind: "shrunken"; readonly average: number; readonly factor: number; readonly values: readonly number[] }
  | { readonly kind: "all-equal"; readonly average: number };
