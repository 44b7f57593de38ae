/** Solves A x = b by elimination with row exchanges; A is given by rows and is left as it was. */
export function linearSystem(matrix: readonly (readonly number[])[], right: readonly number[]): readonly number[] {
  const size = right.length;
  const rows = matrix.map((row, i) => Float64Array.from([...row, right[i] ?? 0]));
  for (let column = 0; column < size; column++) {
    const pivot = pivotBelow(rows, column);
    const top = rows[pivot];
    const current = rows[column];
    if (top === undefined || current === undefined) break;
    rows[pivot] = current;
    rows[column] = top;
    const lead = top[column] ?? 0;
    if (lead === 0) throw new RangeError("matrix must not be singular");
    for (let below = column + 1; below < size; below++) subtractMultiple(rows[below], top, column, lead);
  }
  const solution = new Array<number>(size).fill(0);
  for (let i = size - 1; i >= 0; i--) {
    const row = rows[i] ?? new Float64Array(size + 1);
    let rest = row[size] ?? 0;
    for (let j = i + 1; j < size; j++) rest -= (row[j] ?? 0) * (solution[j] ?? 0);
    solution[i] = rest / (row[i] ?? 1);
  }
  return solution;
}

function pivotBelow(rows: readonly Float64Array[], column: number): number {
  let best = column;
  for (let i = column + 1; i < rows.length; i++) {
    if (Math.abs(rows[i]?.[column] ?? 0) > Math.abs(rows[best]?.[column] ?? 0)) best = i;
  }
  return best;
}

function subtractMultiple(row: Float64Array | undefined, top: Float64Array, column: number, lead: number): void {
  const factor = (row?.[column] ?? 0) / lead;
  if (row === undefined || factor === 0) return;
  for (let j = column; j < top.length; j++) row[j] = (row[j] ?? 0) - factor * (top[j] ?? 0);
}
