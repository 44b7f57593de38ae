import type { SeededDraws } from "@/lib/statistics/demand/seeded-draws";
import { type FittedLife, standardLifeOf } from "@/lib/statistics/life/fitted-life";
import { requirePositive, requireWholeNumber } from "@/lib/statistics/require";

/** One life that may be the true one: the cumulative hazard by an age, 0 at age 0, never falling. */
export type CumulativeHazard = (age: number) => number;

/**
 * Lives drawn from what a fit leaves open: parameters in proportion to their likelihood, flat in log spread and by
 * Jeffreys' rule in the location of each spread, which is half a failure more than was seen; flat in both, too little
 * is expected of few failures. Student proposals somewhat wider than the fit's own errors are kept in proportion to
 * posterior over proposal, so that the skewness of few failures is not lost.
 * @param lives how many to draw, whole number above 0
 * @throws RangeError for an argument outside its range
 * Source: sampling and importance resampling, Rubin (1988) in Bayesian Statistics 3, 395-402; Jeffreys' rule for one
 *   parameter given another, Berger & Bernardo (1992) in Bayesian Statistics 4, 35-60; Meeker & Escobar (1998), section
 *   12.4, on prediction by simulated parameters.
 * Checked: tests/forecast/draw-life.test.ts, against the gamma that it is for a constant hazard, and by how many of
 *   simulated fleets lie in their bands; more of them by `npm run bench -- forecast-lives`.
 */
export function drawLives(fit: FittedLife, lives: number, draws: SeededDraws): readonly CumulativeHazard[] {
  requireWholeNumber("lives", lives);
  requirePositive("lives", lives);
  const { sample } = fit.core;
  const pool = proposals(fit, proposalsPerLife * lives, draws);
  const { failed } = standardLifeOf(fit);
  return resampled(pool, lives, draws).map(({ m: location, s }) => {
    const spread = Math.exp(s);
    return (age) =>
      age <= 0 ? 0 : -Math.log1p(-Math.min(1 - 1e-12, failed((Math.log(age / sample.unit) - location) / spread)));
  });
}

const proposalsPerLife = 4;
/** Tails of the proposals, and how much wider they are than the fit's errors: own choice, no source. */
const freedom = 5;
const wider = 1.3;

interface Proposal {
  readonly m: number;
  readonly s: number;
  readonly weight: number;
}

function proposals({ core }: FittedLife, size: number, draws: SeededDraws): readonly Proposal[] {
  const { peak, covariance, likelihood, spreadFixed } = core;
  const m = Math.sqrt(covariance.mm);
  const slope = spreadFixed ? 0 : covariance.ms / m;
  const rest = spreadFixed ? 0 : Math.sqrt(Math.max(0, covariance.ss - slope * slope));
  const dimensions = spreadFixed ? 1 : 2;
  return Array.from({ length: size }, () => {
    const tail = wider * Math.sqrt(freedom / 2 / draws.gamma(freedom / 2));
    const [a, b] = [tail * draws.normal(), spreadFixed ? 0 : tail * draws.normal()];
    const at = { m: peak.m + m * a, s: peak.s + slope * a + rest * b };
    const { value, mm } = likelihood(at.m, at.s);
    const proposed = -((freedom + dimensions) / 2) * Math.log1p((a * a + b * b) / (wider * wider * freedom));
    const log = value - peak.slopes.value + 0.5 * Math.log(mm / peak.slopes.mm) - proposed;
    return { ...at, weight: Number.isFinite(log) ? Math.exp(Math.min(log, 50)) : 0 };
  });
}

/** Failures over time lived, in bands of age: a life without an assumed shape. */
export interface HazardBand {
  /** The band begins here and ends where the next begins; the last one has no end. */
  readonly from: number;
  readonly failures: number;
  /** Time lived in the band, in the unit of age, above 0. */
  readonly lived: number;
}

/**
 * The same where no shape fits: in each band the hazard is a gamma draw around failures over time lived, with half a
 * failure added (Jeffreys).
 * @param bands ascending, the first from age 0
 */
export function drawBandedLives(
  bands: readonly HazardBand[],
  lives: number,
  draws: SeededDraws,
): readonly CumulativeHazard[] {
  for (const [i, { from, failures, lived }] of bands.entries()) {
    requireWholeNumber(`bands[${i}].failures`, failures);
    requirePositive(`bands[${i}].lived`, lived);
    if (i === 0 ? from !== 0 : from <= (bands[i - 1]?.from ?? 0))
      throw new RangeError(`bands[${i}].from must ascend from 0; it is ${from}`);
  }
  return Array.from({ length: lives }, () => {
    const rates = bands.map(({ failures, lived }) => draws.gamma(failures + 0.5) / lived);
    return (age) =>
      bands.reduce((sum, { from }, i) => {
        const to = Math.min(age, bands[i + 1]?.from ?? age);
        return to > from ? sum + (rates[i] ?? 0) * (to - from) : sum;
      }, 0);
  });
}

/** Systematic resampling: one uniform for all, so that weights turn into numbers of copies with least noise. */
function resampled<T extends { readonly weight: number }>(
  pool: readonly T[],
  size: number,
  draws: SeededDraws,
): readonly T[] {
  const total = pool.reduce((sum, { weight }) => sum + weight, 0);
  const step = total / size;
  let next = step * draws.uniform();
  let sum = 0;
  return pool.flatMap((item) => {
    sum += item.weight;
    const copies: T[] = [];
    for (; next < sum; next += step) copies.push(item);
    return copies;
  });
}
