import type { SeededDraws } from "../demand/seeded-draws";
import { requireNonNegative } from "../require";
import type { LivedAges } from "./lived-ages";

/** A Weibull life: the cumulative hazard by an age is rate × age^shape, in the unit of the bands. */
export interface WeibullLife {
  readonly shape: number;
  readonly rate: number;
}

export interface WeibullPosterior {
  readonly failures: number;
  /** Mean of the shapes. */
  readonly meanShape: number;
  readonly draw: (draws: SeededDraws) => WeibullLife;
}

/** Shapes that are thought possible: from parts that mostly fail new to such as wear out all at one age. Own choice, no source. */
const [lowestShape, highestShape] = [0.25, 8];
/** Places of the grid; it is drawn together until at least so many of them stand where anything may be true. */
const [steps, fewestPlaces] = [32, 12];
/** Logarithm of the chance, next to the likeliest place, below which nothing is looked for. */
const negligible = -12;

/**
 * What failures and time lived by age leave open of a Weibull life. Given its shape, the rate is a gamma: of the
 * failures, and half a failure more (Jeffreys), over the sum of all ages lived through to the power of the shape.
 * Shapes stand on a grid, flat in their logarithm before the data. Half a failure more, because flat in the location
 * too little is expected of few failures.
 * @param ages     failures are taken as in the middle of their band, time lived as spread evenly over it
 * @param lessFailures failures that have another cause than the life, 0 or more: they are not counted for the rate
 * @throws RangeError where no time was lived
 * Source: the gamma given the shape, Soland (1969), IEEE Trans. Reliability R-18, 181-184; Jeffreys' rule for one
 *   parameter given another, Berger & Bernardo (1992) in Bayesian Statistics 4, 35-60.
 * Checked: tests/statistics/life/weibull-posterior.test.ts, against the gamma that it is for one shape, the likelihood
 *   fit of the same lives, and by how many of simulated fleets lie in their bands.
 */
export function weibullPosterior({ failed, lived }: LivedAges, lessFailures = 0): WeibullPosterior {
  requireNonNegative("lessFailures", lessFailures);
  const bands = failed.length;
  const unit = Math.max(1, bands);
  const all = failed.reduce((sum, count) => sum + count, 0);
  if (!(lived.reduce((sum, time) => sum + time, 0) > 0))
    throw new RangeError("lived must hold some time; it holds none");
  const logs = failed.reduce((sum, count, band) => sum + count * Math.log((band + 0.5) / unit), 0);
  const failures = Math.max(0, all - lessFailures);
  const share = all === 0 ? 0 : failures / all;
  const heightAt = (shape: number) => {
    const logSum = Math.log(powerSum(lived, shape, unit));
    return { logSum, height: failures * Math.log(shape) + (shape - 1) * share * logs - failures * logSum };
  };
  const { shapes, logSums, weights } = gridOf(heightAt);
  return {
    failures,
    meanShape: weights.reduce((sum, weight, i) => sum + weight * (shapes[i] ?? 0), 0),
    draw: (draws) => {
      // Anywhere between neighbours on the grid; the sum of powers is smooth enough to lie on a line between them.
      const place = Math.min(steps, Math.max(0, pick(weights, draws.uniform()) + draws.uniform() - 0.5));
      const below = Math.min(steps - 1, Math.floor(place));
      const rest = place - below;
      const logSum = (1 - rest) * (logSums[below] ?? 0) + rest * (logSums[below + 1] ?? 0);
      const shape = (shapes[below] ?? 1) ** (1 - rest) * (shapes[below + 1] ?? 1) ** rest;
      return { shape, rate: (draws.gamma(failures + 0.5) / Math.exp(logSum)) * unit ** -shape };
    },
  };
}

/** Places even in the logarithm of the shape, drawn together around those that may be true. */
function gridOf(heightAt: (shape: number) => { readonly logSum: number; readonly height: number }) {
  let [low, high] = [lowestShape, highestShape];
  for (;;) {
    const step = Math.log(high / low) / steps;
    const shapes = Array.from({ length: steps + 1 }, (_, i) => low * Math.exp(step * i));
    const found = shapes.map(heightAt);
    const highest = Math.max(...found.map(({ height }) => height));
    const possible = found.flatMap(({ height }, i) => (height > highest + negligible ? [i] : []));
    const [first = 0, last = steps] = [possible[0], possible.at(-1)];
    if (possible.length >= fewestPlaces)
      return {
        shapes,
        logSums: found.map(({ logSum }) => logSum),
        weights: chances(found.map(({ height }) => height)),
      };
    [low, high] = [shapes[Math.max(0, first - 1)] ?? low, shapes[Math.min(steps, last + 1)] ?? high];
  }
}

/** Sum of age^shape gained by all time lived, ages over the unit so that no power overflows. */
function powerSum(lived: Float64Array, shape: number, unit: number): number {
  let [sum, before] = [0, 0];
  for (let band = 0; band < lived.length; band++) {
    const after = ((band + 1) / unit) ** shape;
    sum += (lived[band] ?? 0) * (after - before);
    before = after;
  }
  return sum;
}

function chances(logs: readonly number[]): readonly number[] {
  const highest = Math.max(...logs);
  const weights = logs.map((log) => Math.exp(log - highest));
  const total = weights.reduce((sum, weight) => sum + weight, 0);
  return weights.map((weight) => weight / total);
}

function pick(weights: readonly number[], uniform: number): number {
  let rest = uniform;
  for (const [i, weight] of weights.entries()) {
    rest -= weight;
    if (rest < 0) return i;
  }
  return weights.length - 1;
}
