import { requireNonNegative } from "../require";

/**
 * How much is still to come of what is reported by instalments: the chain ladder, with Mack's standard errors.
 * Works for money and for counts alike; a row is a period of origin, a column is a period of delay.
 * @param cumulative rows of cumulative amounts, oldest first; the first row is complete, no row is longer than the
 *   one before it, every row has at least one entry; amounts 0 or more
 * @param tailVariance how the variance of the last step, seen on one row only, is set: "mack" continues the decline
 *   of the two before it and never exceeds either
 * @returns per origin the latest amount, the projected final one, what is to come, and its standard error; the same
 *   for the total. "cannot-develop" names the first delay that has no amount to grow from
 * @throws RangeError for a malformed triangle
 * Source: Mack (1993), ASTIN Bulletin 23, 213-225; Mack (1994) for the total and the data of the test.
 * Checked: tests/statistics/delay.test.ts (case C01).
 */
export function chainLadder({ cumulative, tailVariance }: ChainLadderInput): ChainLadder {
  const triangle = requireTriangle(cumulative);
  const steps: Step[] = [];
  for (let delay = 0; delay + 1 < triangle.delays; delay++) {
    const step = stepAt(triangle.rows, delay);
    if (step === undefined) return { kind: "cannot-develop", delay };
    steps.push(step);
  }
  const variances = stepVariances(steps, tailVariance);
  const origins = triangle.rows.map((row) => projectRow({ row, steps, variances }));
  const toCome = origins.reduce((sum, origin) => sum + origin.toCome, 0);
  const variance = totalVariance({ rows: triangle.rows, origins, steps, variances });
  return {
    kind: "projected",
    factors: steps.map((step) => step.factor),
    origins,
    toCome,
    standardError: Math.sqrt(variance),
  };
}

export interface ChainLadderInput {
  readonly cumulative: readonly (readonly number[])[];
  readonly tailVariance: "mack";
}

export type ChainLadder =
  | {
      readonly kind: "projected";
      readonly factors: readonly number[];
      readonly origins: readonly ProjectedOrigin[];
      readonly toCome: number;
      readonly standardError: number;
    }
  | { readonly kind: "cannot-develop"; readonly delay: number };

export interface ProjectedOrigin {
  readonly latest: number;
  readonly final: number;
  readonly toCome: number;
  readonly standardError: number;
}

interface Step {
  readonly factor: number;
  /** Sum of the amounts that the factor was measured on. */
  readonly base: number;
  /** Weighted squares of the single factors around it, and how many were free to vary. */
  readonly squares: number;
  readonly freedom: number;
}

type Row = readonly number[];

function stepAt(rows: readonly Row[], delay: number): Step | undefined {
  const pairs = rows.flatMap((row) => {
    const from = row[delay];
    const to = row[delay + 1];
    return from === undefined || to === undefined ? [] : [{ from, to }];
  });
  const base = pairs.reduce((sum, { from }) => sum + from, 0);
  if (base === 0) return undefined;
  const factor = pairs.reduce((sum, { to }) => sum + to, 0) / base;
  const squares = pairs.reduce((sum, { from, to }) => sum + (from > 0 ? (to - factor * from) ** 2 / from : 0), 0);
  return { factor, base, squares, freedom: pairs.filter(({ from }) => from > 0).length - 1 };
}

function stepVariances(steps: readonly Step[], tailVariance: "mack"): readonly number[] {
  const variances: number[] = [];
  for (const step of steps) {
    const before = variances.at(-1) ?? 0;
    const earlier = variances.at(-2) ?? before;
    // One row leaves nothing to measure the spread on.
    const continued = tailVariance === "mack" && earlier > 0 ? Math.min(before ** 2 / earlier, before, earlier) : 0;
    variances.push(step.freedom > 0 ? step.squares / step.freedom : continued);
  }
  return variances;
}

interface Projection {
  readonly row: Row;
  readonly steps: readonly Step[];
  readonly variances: readonly number[];
}

function projectRow({ row, steps, variances }: Projection): ProjectedOrigin {
  const latest = row.at(-1) ?? 0;
  let amount = latest;
  let relative = 0;
  steps.slice(row.length - 1).forEach((step, i) => {
    const variance = (variances[row.length - 1 + i] ?? 0) / step.factor ** 2;
    relative += variance * ((amount > 0 ? 1 / amount : 0) + 1 / step.base);
    amount *= step.factor;
  });
  return { latest, final: amount, toCome: amount - latest, standardError: amount * Math.sqrt(relative) };
}

interface Whole {
  readonly rows: readonly Row[];
  readonly origins: readonly ProjectedOrigin[];
  readonly steps: readonly Step[];
  readonly variances: readonly number[];
}

/** Origins share the estimated factors, so their errors go together: the second term of Mack's formula. */
function totalVariance({ rows, origins, steps, variances }: Whole): number {
  let laterFinals = 0;
  let sum = 0;
  for (let i = rows.length - 1; i >= 0; i--) {
    const origin = origins[i];
    const row = rows[i];
    if (origin === undefined || row === undefined) continue;
    const shared = steps.reduce(
      (all, step, k) => (k < row.length - 1 ? all : all + (2 * (variances[k] ?? 0)) / (step.factor ** 2 * step.base)),
      0,
    );
    sum += origin.standardError ** 2 + origin.final * laterFinals * shared;
    laterFinals += origin.final;
  }
  return sum;
}

function requireTriangle(rows: readonly Row[]): { readonly rows: readonly Row[]; readonly delays: number } {
  const delays = rows[0]?.length ?? 0;
  if (delays < 2) throw new RangeError("cumulative must begin with a complete row of at least two delays");
  rows.forEach((row, i) => {
    const before = rows[i - 1]?.length ?? row.length;
    if (row.length === 0 || row.length > before) {
      throw new RangeError(`cumulative[${i}] must hold 1 to ${before} amounts; it holds ${row.length}`);
    }
    row.forEach((amount, delay) => {
      requireNonNegative(`cumulative[${i}][${delay}]`, amount);
    });
  });
  return { rows, delays };
}
