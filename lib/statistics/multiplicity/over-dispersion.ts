import { requireFinite, requirePositive } from "../require";

/**
 * How much more groups differ than chance alone would make them, from their z-scores, after pulling in the extreme
 * ones so that the groups one is looking for do not widen the limits that should find them.
 * @param groups      z-score of each group and the standard error it was formed with, above 0; at least two
 * @param winsorShare share of the groups pulled in at each end, 0 up to but not including 0.5 (0.1 is usual)
 * @returns factor: mean of the squared winsorised z-scores, by which variances grow in the multiplicative model
 *   (use it only above 1); betweenVariance: the extra variance of the additive random-effects model, 0 if none
 * @throws RangeError for an argument outside its range
 * Source: Spiegelhalter (2005), Quality and Safety in Health Care 14, 347-351; DerSimonian & Laird (1986),
 *   Controlled Clinical Trials 7, 177-188, for the additive form.
 * Checked: tests/statistics/funnel.test.ts, against R.
 */
export function overDispersion({ groups, winsorShare }: OverDispersionInput): OverDispersion {
  if (groups.length < 2) throw new RangeError(`groups must hold at least two groups; it holds ${groups.length}`);
  if (!(winsorShare >= 0 && winsorShare < 0.5)) {
    throw new RangeError(`winsorShare must be at least 0 and below 0.5; it is ${winsorShare}`);
  }
  groups.forEach(({ z, standardError }, i) => {
    if (Number.isFinite(z) && standardError > 0 && Number.isFinite(standardError)) return; // names are made where they are needed
    requireFinite(`groups[${i}].z`, z);
    requirePositive(`groups[${i}].standardError`, standardError);
  });
  const ascending = Float64Array.from(groups, ({ z }) => z).sort();
  const low = sampleQuantile(ascending, winsorShare);
  const high = sampleQuantile(ascending, 1 - winsorShare);
  const squares = ascending.map((z) => Math.min(high, Math.max(low, z)) ** 2);
  const factor = squares.reduce((sum, square) => sum + square, 0) / groups.length;
  const weights = groups.map(({ standardError }) => 1 / (standardError * standardError));
  const total = weights.reduce((sum, weight) => sum + weight, 0);
  const totalSquares = weights.reduce((sum, weight) => sum + weight * weight, 0);
  const excess = groups.length * factor - (groups.length - 1);
  return { factor, betweenVariance: Math.max(0, excess / (total - totalSquares / total)) };
}

export interface OverDispersionInput {
  readonly groups: readonly { readonly z: number; readonly standardError: number }[];
  readonly winsorShare: number;
}

export interface OverDispersion {
  readonly factor: number;
  readonly betweenVariance: number;
}

/** Quantile of sorted values, interpolated between order statistics (definition 7 of Hyndman & Fan 1996). */
export function sampleQuantile(ascending: ArrayLike<number>, probability: number): number {
  const place = (ascending.length - 1) * probability;
  const below = Math.floor(place);
  const low = ascending[below] ?? 0;
  const high = ascending[below + 1] ?? low;
  return low + (place - below) * (high - low);
}
