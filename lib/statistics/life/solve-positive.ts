/**
 * Inverse of a symmetric positive definite matrix by Cholesky factors; none when it is not positive definite.
 * @param matrix square, symmetric, rows of equal length
 */
export function invertPositive(matrix: readonly Float64Array[]): Float64Array[] | "not-positive" {
  const size = matrix.length;
  const lower = matrix.map(() => new Float64Array(size));
  const at = (rows: readonly Float64Array[], i: number, j: number) => rows[i]?.[j] ?? 0;
  for (let i = 0; i < size; i++) {
    for (let j = 0; j <= i; j++) {
      let rest = at(matrix, i, j);
      for (let k = 0; k < j; k++) rest -= at(lower, i, k) * at(lower, j, k);
      const row = lower[i];
      if (row === undefined) continue;
      if (i !== j) row[j] = rest / at(lower, j, j);
      else if (rest > 1e-12 * Math.abs(at(matrix, i, i))) row[i] = Math.sqrt(rest);
      else return "not-positive";
    }
  }
  return matrix.map((_, column) => solveFactored(lower, column));
}

/** Solves L Lᵀ x = unit vector: one column of the inverse. */
function solveFactored(lower: readonly Float64Array[], unit: number): Float64Array {
  const size = lower.length;
  const solution = new Float64Array(size);
  for (let i = 0; i < size; i++) {
    let rest = i === unit ? 1 : 0;
    for (let k = 0; k < i; k++) rest -= (lower[i]?.[k] ?? 0) * (solution[k] ?? 0);
    solution[i] = rest / (lower[i]?.[i] ?? 1);
  }
  for (let i = size - 1; i >= 0; i--) {
    let rest = solution[i] ?? 0;
    for (let k = i + 1; k < size; k++) rest -= (lower[k]?.[i] ?? 0) * (solution[k] ?? 0);
    solution[i] = rest / (lower[i]?.[i] ?? 1);
  }
  return solution;
}

export function times(matrix: readonly Float64Array[], vector: Float64Array): Float64Array {
  return Float64Array.from(matrix, (row) => dot(row, vector));
}

export function dot(a: Float64Array, b: Float64Array): number {
  return a.reduce((sum, value, i) => sum + value * (b[i] ?? 0), 0);
}
