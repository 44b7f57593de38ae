/**
 * The one shape in which an estimated number leaves `lib/statistics` and reaches a page: never a point without its
 * count, its denominator, its interval and the way that interval was made.
 * point, lo, hi, innerLo and innerHi are in the natural unit of the basis: events per 1 unit of exposure, a share
 * in 0..1, or a ratio. innerLo..innerHi is the 50 % interval by the same method.
 */
export interface Estimate {
  readonly events: number;
  /** The denominator: exposure of a rate, trials of a share, expected events of a ratio. */
  readonly n: number;
  readonly point: number;
  readonly lo: number;
  readonly hi: number;
  readonly innerLo: number;
  readonly innerHi: number;
  /** Two-sided confidence of lo..hi, in (0, 1). */
  readonly level: number;
  readonly method: EstimateMethod;
  readonly basis: EstimateBasis;
}

export type EstimateMethod =
  | "poisson-exact"
  | "poisson-mid-p"
  | "poisson-robust"
  | "gamma-poisson"
  | ShareMethod
  | "goodman"
  | "kaplan-meier-log-log"
  | "life-fit-logit"
  | "mean-cumulative-robust"
  | "rate-ratio-exact"
  | "rate-ratio-stratified-exact"
  | "observed-over-expected-exact";

export type ShareMethod =
  | "wilson"
  | "wilson-continuity"
  | "clopper-pearson"
  | "binomial-mid-p"
  | "binomial-likelihood"
  | "jeffreys"
  | "agresti-coull";

export type EstimateBasis =
  | { readonly kind: "rate"; readonly exposureUnit: "unit-years" }
  | { readonly kind: "share" }
  | { readonly kind: "ratio" };
