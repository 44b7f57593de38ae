/** One life or group of alike lives, with its regressors (the first is 1, for the intercept) and log ages. */
export interface RegressionRow {
  readonly design: Float64Array;
  /** −Infinity when watched from age 0: nothing to give back. */
  readonly logEntry: number;
  readonly logExit: number;
  readonly event: boolean;
  readonly count: number;
}

export interface RegressionSlopes {
  value: number;
  /** By each coefficient, then by the log spread. */
  readonly gradient: Float64Array;
  /** Minus the second derivatives, symmetric. */
  readonly information: readonly Float64Array[];
}

/**
 * Weibull log-likelihood when log life has mean level `design · coefficients` and log spread s, with late entry:
 * event × log hazard at exit − cumulative hazard at exit + cumulative hazard at entry.
 * @param parameters the coefficients, then s
 */
export function regressionSlopes(rows: readonly RegressionRow[], parameters: Float64Array): RegressionSlopes {
  const size = parameters.length;
  const s = parameters[size - 1] ?? 0;
  const information = Array.from(parameters, () => new Float64Array(size));
  const slopes: RegressionSlopes = { value: 0, gradient: new Float64Array(size), information };
  for (const row of rows) {
    const level = row.design.reduce((sum, x, i) => sum + x * (parameters[i] ?? 0), 0);
    const z = (row.logExit - level) * Math.exp(-s);
    if (row.event) {
      slopes.value += row.count * (z - s - row.logExit);
      slopes.gradient[size - 1] = (slopes.gradient[size - 1] ?? 0) - row.count;
      addTerm(slopes, row, { z, s, first: row.count, second: 0 });
    }
    const lived = row.count * Math.exp(z);
    slopes.value -= lived;
    addTerm(slopes, row, { z, s, first: -lived, second: -lived });
    if (row.logEntry === Number.NEGATIVE_INFINITY) continue;
    const before = (row.logEntry - level) * Math.exp(-s);
    const unseen = row.count * Math.exp(before);
    slopes.value += unseen;
    addTerm(slopes, row, { z: before, s, first: unseen, second: unseen });
  }
  return slopes;
}

/** Chain rule for a term g(z), from its first and second derivative, to the coefficients and s. */
function addTerm(
  { gradient, information }: RegressionSlopes,
  { design }: RegressionRow,
  { z, s, first, second }: { z: number; s: number; first: number; second: number },
): void {
  const inverse = Math.exp(-s);
  const last = gradient.length - 1;
  const step = (i: number) => (i === last ? z : (design[i] ?? 0) * inverse);
  for (let i = 0; i <= last; i++) {
    gradient[i] = (gradient[i] ?? 0) - first * step(i);
    const row = information[i];
    if (row === undefined) continue;
    for (let j = 0; j <= last; j++) {
      // z bends only where s is one of the two directions: by the step in the other one.
      const bend = i === last ? step(j) : j === last ? step(i) : 0;
      row[j] = (row[j] ?? 0) - second * step(i) * step(j) - first * bend;
    }
  }
}
