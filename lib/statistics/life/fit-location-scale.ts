import { requirePositive, requireProbability, requireWholeNumber } from "../require";
import { type FailedAtZero, type FitSource, type LifeSample, lifeSample } from "./life-sample";
import { lognormalLikelihood } from "./lognormal-likelihood";
import { type Likelihood, maximiseLikelihood, type Peak } from "./maximise-likelihood";
import { weibullLikelihood } from "./weibull-likelihood";

export interface FitOptions {
  /** Two-sided level in (0, 1) of every interval of the fit. */
  readonly confidence: number;
  /** Fewer failures than this are refused: whole number, 1 or more. */
  readonly minimumEvents: number;
  /** How to count failures at age 0; without it they are refused, since log 0 has no value. */
  readonly failedAtZero?: FailedAtZero;
}

/** Why no life distribution was fitted. */
export type RefusedFit = {
  readonly kind: "refused";
  /**
   * `no-exposure`: nobody was watched for any time. `no-events`: everybody is still sound or lost.
   * `too-few-events`: fewer than the caller's minimum. `failure-at-age-zero`: say how to count them.
   * `flat-likelihood`: the data fix no single best fit (for example all failures at the last watched age, or all bounds alike).
   */
  readonly reason: "no-exposure" | "no-events" | "too-few-events" | "failure-at-age-zero" | "flat-likelihood";
  readonly lives: number;
  readonly events: number;
};

/** Inverse of minus the second derivatives at the peak, in location m and log spread s. */
export interface PeakCovariance {
  readonly mm: number;
  readonly ms: number;
  readonly ss: number;
}

export interface LocationScaleFit {
  readonly kind: "fitted";
  readonly sample: LifeSample;
  readonly likelihood: Likelihood;
  readonly peak: Peak;
  readonly covariance: PeakCovariance;
  /** True for the exponential life, whose spread is 1 by definition and never moves. */
  readonly spreadFixed: boolean;
}

/** Checks the options and the sample, in the order in which a reader would want to know. */
export function acceptedSample(
  source: FitSource,
  options: FitOptions,
): { readonly kind: "sample"; readonly sample: LifeSample } | RefusedFit {
  requireProbability("confidence", options.confidence);
  requireWholeNumber("minimumEvents", options.minimumEvents);
  requirePositive("minimumEvents", options.minimumEvents);
  if (options.failedAtZero !== undefined) requirePositive("failedAtZero.within", options.failedAtZero.within);
  const read = lifeSample(source, options.failedAtZero);
  if (read.kind === "failure-at-age-zero")
    return { kind: "refused", reason: read.kind, lives: read.lives, events: read.events };
  const { lives, events, lastWatched } = read.sample;
  const refuse = (reason: RefusedFit["reason"]): RefusedFit => ({ kind: "refused", reason, lives, events });
  if (events === 0) return refuse(lastWatched > 0 ? "no-events" : "no-exposure");
  return events < options.minimumEvents ? refuse("too-few-events") : read;
}

/** Maximum likelihood for a Weibull or lognormal life, shared by `fitWeibull` and `fitLognormal`. */
export function fitLocationScale(
  family: "weibull" | "lognormal",
  source: FitSource,
  options: FitOptions,
): LocationScaleFit | RefusedFit {
  const accepted = acceptedSample(source, options);
  if (accepted.kind === "refused") return accepted;
  const { sample } = accepted;
  const flat: RefusedFit = { kind: "refused", reason: "flat-likelihood", lives: sample.lives, events: sample.events };
  if (isSpike(sample)) return flat;
  const likelihood: Likelihood =
    family === "weibull" ? (m, s) => weibullLikelihood(sample, m, s) : (m, s) => lognormalLikelihood(sample, m, s);
  const found = maximiseLikelihood(likelihood, { m: startingLocation(sample), s: 0 });
  if (found.kind === "flat-likelihood") return flat;
  const { mm, ms, ss } = found.slopes;
  const determinant = mm * ss - ms * ms;
  const covariance = { mm: -ss / determinant, ms: ms / determinant, ss: -mm / determinant };
  return { kind: "fitted", sample, likelihood, peak: found, covariance, spreadFixed: false };
}

/** What every fitted life tells besides its parameters. */
export interface FitSummary {
  readonly kind: "fitted";
  readonly lives: number;
  readonly events: number;
  readonly confidence: number;
  /** Natural log of the likelihood, constants included: comparable between families on the same rows. */
  readonly logLikelihood: number;
  /** Akaike's criterion: the smaller fits better. */
  readonly aic: number;
  /** What `failureAge` and `failureProbability` need to answer further questions. */
  readonly core: LocationScaleFit;
}

export function fitSummary(core: LocationScaleFit, confidence: number): FitSummary {
  const { lives, events } = core.sample;
  const logLikelihood = core.peak.slopes.value;
  const parameters = core.spreadFixed ? 1 : 2;
  return { kind: "fitted", lives, events, confidence, logLikelihood, aic: 2 * parameters - 2 * logLikelihood, core };
}

/** All failures at one exact age that nobody is known to have outlived: the narrower the better, without end. */
function isSpike(sample: LifeSample): boolean {
  return sample.bounded.length === 0 && sample.firstExact === sample.lastWatched;
}

/** Where an exponential life would lie: the time lived in all per failure, on the sample's log scale. */
export function startingLocation({ logAges, goneLessEntered, bounded, events }: LifeSample): number {
  const known = logAges.reduce((sum, y, i) => sum + (goneLessEntered[i] ?? 0) * Math.exp(y), 0);
  const lived = bounded.reduce((sum, row) => sum + row.count * Math.exp(row.high) * 0.5, known);
  return lived > 0 ? Math.log(lived / events) : 0;
}
