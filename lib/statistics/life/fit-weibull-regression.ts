import { normalQuantile } from "../normal";
import { requireProbability, requireWholeNumber } from "../require";
import type { LifeRow } from "../survival/life-rows";
import { visitLives } from "../survival/life-rows";
import type { RefusedFit } from "./fit-location-scale";
import { dot, invertPositive, times } from "./solve-positive";
import { type RegressionRow, type RegressionSlopes, regressionSlopes } from "./weibull-regression-likelihood";

/**
 * Weibull life whose scale depends on covariates (accelerated failure time): log life has level
 * intercept + Σ coefficient × covariate, one shape for all. exp(coefficient) multiplies every age of failure.
 * @param rows     lives with right censoring and late entry; exit above 0; `covariates` of one length in all rows
 * @param options  confidence of the Wald limits in (0, 1); fewest failures to accept; no defaults
 * @returns coefficients in the order of the covariates, or why there is no fit
 * @throws RangeError for rows or options outside their range
 * Source: Lawless (2003), Statistical Models and Methods for Lifetime Data, chapter 6.
 * Checked: tests/statistics/life/fit-weibull-regression.test.ts, published values and R survreg.
 */
export function fitWeibullRegression(rows: readonly RegressedLife[], options: RegressionOptions): RegressionFit {
  requireProbability("confidence", options.confidence);
  requireWholeNumber("minimumEvents", options.minimumEvents);
  const lives = rows.reduce((sum, row) => sum + row.count, 0);
  const events = rows.reduce((sum, row) => sum + (row.event ? row.count : 0), 0);
  const refuse = (reason: RefusedFit["reason"]): RefusedFit => ({ kind: "refused", reason, lives, events });
  if (lives === 0) return refuse("no-exposure");
  if (events === 0) return refuse("no-events");
  if (events < options.minimumEvents) return refuse("too-few-events");
  if (rows.some((row) => row.event && row.exit === 0 && row.count > 0)) return refuse("failure-at-age-zero");
  const scaling = covariateScaling(rows);
  const top = climb(standardRows(rows, scaling), startingPoint(rows, scaling.length + 2));
  return top === "flat-likelihood" ? refuse(top) : described(top, scaling, { ...options, lives, events });
}

export interface RegressedLife extends LifeRow {
  readonly covariates: readonly number[];
}

export interface RegressionOptions {
  readonly confidence: number;
  readonly minimumEvents: number;
}

export interface RegressionEstimate {
  readonly value: number;
  readonly standardError: number;
  readonly low: number;
  readonly high: number;
}

export type RegressionFit =
  | {
      readonly kind: "fitted";
      readonly lives: number;
      readonly events: number;
      /** Level of natural log age where every covariate is 0. */
      readonly intercept: RegressionEstimate;
      readonly coefficients: readonly RegressionEstimate[];
      readonly logShape: RegressionEstimate;
      readonly logLikelihood: number;
      /** Largest slope left at the fit, over all parameters: the sign that the top was reached. */
      readonly largestSlope: number;
    }
  | RefusedFit;

interface Scaling {
  readonly centre: number;
  readonly spread: number;
}

/** Covariates are fitted centred and scaled, so that years and 0/1 flags are on one footing. */
function covariateScaling(rows: readonly RegressedLife[]): Scaling[] {
  const width = rows[0]?.covariates.length ?? 0;
  rows.forEach(({ covariates }, i) => {
    if (covariates.length !== width || !covariates.every(Number.isFinite)) {
      throw new RangeError(`rows[${i}].covariates must be ${width} finite numbers, as in the first row`);
    }
  });
  return Array.from({ length: width }, (_, column) => {
    const values = rows.map((row) => row.covariates[column] ?? 0);
    const centre = values.reduce((sum, value) => sum + value, 0) / values.length;
    const spread = Math.sqrt(values.reduce((sum, value) => sum + (value - centre) ** 2, 0) / values.length);
    return { centre, spread: spread === 0 ? 1 : spread };
  });
}

function standardRows(rows: readonly RegressedLife[], scaling: readonly Scaling[]): RegressionRow[] {
  return rows.flatMap((row) => {
    const kept: RegressionRow[] = [];
    const design = Float64Array.from([
      1,
      ...row.covariates.map((x, i) => (x - (scaling[i]?.centre ?? 0)) / (scaling[i]?.spread ?? 1)),
    ]);
    visitLives([row], (entry, exit, event, count) => {
      if (exit > 0) kept.push({ design, logEntry: Math.log(entry), logExit: Math.log(exit), event, count });
    });
    return kept;
  });
}

/** The exponential life without covariates. */
function startingPoint(rows: readonly LifeRow[], size: number): Float64Array {
  const lived = rows.reduce((sum, row) => sum + row.count * (row.exit - row.entry), 0);
  const events = rows.reduce((sum, row) => sum + (row.event ? row.count : 0), 0);
  const start = new Float64Array(size);
  start[0] = Math.log(lived / events);
  return start;
}

interface Top {
  readonly parameters: Float64Array;
  readonly slopes: RegressionSlopes;
  readonly covariance: readonly Float64Array[];
}

/** Newton steps, damped while the surface is no bowl and halved while they go down; judged by the slope, not the gain. */
function climb(rows: readonly RegressionRow[], start: Float64Array): Top | "flat-likelihood" {
  let parameters = start;
  let slopes = regressionSlopes(rows, parameters);
  let bestGap = Number.POSITIVE_INFINITY;
  for (let step = 0; step < 200; step++) {
    const inverse = invertPositive(slopes.information);
    const move = inverse === "not-positive" ? dampedMove(slopes) : times(inverse, slopes.gradient);
    const gap = dot(move, slopes.gradient);
    if (inverse !== "not-positive" && (gap < 1e-22 || (gap < 1e-14 && gap >= bestGap))) {
      return { parameters, slopes, covariance: inverse };
    }
    const settled = inverse !== "not-positive" && gap < 1e-9;
    if (settled) bestGap = gap;
    const from = { parameters, slopes };
    for (let cut = 1; ; cut /= 2) {
      if (cut < 1e-10) return "flat-likelihood";
      parameters = from.parameters.map((value, i) => value + cut * (move[i] ?? 0));
      slopes = regressionSlopes(rows, parameters);
      if (settled || slopes.value > from.slopes.value) break;
    }
    if (Math.abs(parameters.at(-1) ?? 0) > 10) return "flat-likelihood";
  }
  return "flat-likelihood";
}

/** Uphill along the slope, each parameter in its own scale. */
function dampedMove({ gradient, information }: RegressionSlopes): Float64Array {
  return gradient.map((slope, i) => Math.max(-1, Math.min(1, slope / Math.max(1, Math.abs(information[i]?.[i] ?? 1)))));
}

function described(
  { parameters, slopes, covariance }: Top,
  scaling: readonly Scaling[],
  { confidence, lives, events }: RegressionOptions & { lives: number; events: number },
): RegressionFit {
  const multiplier = -normalQuantile((1 - confidence) / 2);
  const last = parameters.length - 1;
  /** A linear combination of the fitted parameters with its error. */
  const combined = (weights: Float64Array): RegressionEstimate => {
    const value = dot(weights, parameters);
    const standardError = Math.sqrt(dot(weights, times(covariance, weights)));
    return { value, standardError, low: value - multiplier * standardError, high: value + multiplier * standardError };
  };
  const unit = (place: number, weight: number) => parameters.map((_, i) => (i === place ? weight : 0));
  const backToZero = parameters.map((_, i) => {
    const scale = scaling[i - 1];
    return i === 0 ? 1 : scale === undefined ? 0 : -scale.centre / scale.spread;
  });
  // The slope in the covariates' own units: centred columns pick up the intercept's slope as well.
  const ownSlopes = slopes.gradient.map((slope, i) => {
    const scale = scaling[i - 1];
    return scale === undefined ? slope : slope * scale.spread + scale.centre * (slopes.gradient[0] ?? 0);
  });
  return {
    kind: "fitted",
    lives,
    events,
    intercept: combined(backToZero),
    coefficients: scaling.map(({ spread }, i) => combined(unit(i + 1, 1 / spread))),
    logShape: combined(unit(last, -1)),
    logLikelihood: slopes.value,
    largestSlope: ownSlopes.reduce((largest, slope) => Math.max(largest, Math.abs(slope)), 0),
  };
}
