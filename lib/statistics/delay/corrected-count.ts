import { negativeBinomialQuantile } from "../discrete/negative-binomial";
import { requireProbability, requireWholeNumber } from "../require";
import { type JoinedPeriod, joinPeriods } from "./join-periods";
import type { EstimatedDelay } from "./reporting-delay";

/**
 * How many events of the latest periods there will have been once all are reported: those on record, divided by the
 * share of them that can be on record by now.
 * Events are taken to happen at an even pace within a period, and within several that are taken together because
 * they hold too few reports alone.
 * @param periods  newest first; of each the age in whole days of each of its days, and its reports so far
 * @param delay    distribution of the delays; its own doubt goes into the range
 * @param fewestTogether  periods are joined, from the newest back, until each holds at least this many reports
 * @param level    two-sided level of lo..hi, in (0, 1)
 * @returns events on record; how many are expected in all; and whole numbers between which the final count will fall,
 *   lo never below the events. "too-recent": no event this young could be on record yet
 * @throws RangeError for an argument outside its range
 * Source: Kalbfleisch & Lawless (1991), Statistica Sinica 1, 19-32, for the estimate. The range is that of a negative
 *   binomial count (a Poisson count whose rate has the Jeffreys posterior of the reports so far), widened by the
 *   delta-method variance of the delay distribution; that combination is this project's own.
 * Checked: tests/statistics/delay-correction.test.ts, by hand, against R, and on diagnoses whose final numbers became
 *   known later; tests/statistics/delay-coverage.test.ts, by simulation with a known delay.
 */
export function correctedCount({ periods, delay, fewestTogether, level }: CorrectedCountInput): CorrectedCount {
  requireProbability("level", level);
  requireWholeNumber("fewestTogether", fewestTogether);
  const joined = joinPeriods(periods, delay, fewestTogether);
  const events = periods.reduce((sum, { reports }) => sum + reports, 0);
  if (joined === undefined) return { kind: "too-recent", events };
  const toCome = joined.reduce((sum, { reports, growth }) => sum + reports * growth, 0);
  const mean = joined.reduce((sum, { reports, growth }) => sum + (reports + half) * growth, 0);
  if (mean === 0) return { kind: "corrected", events, corrected: events, lo: events, hi: events, level };
  const spread =
    joined.reduce((sum, { reports, growth }) => sum + (reports + half) * growth ** 2, 0) + delayVariance(joined);
  const shape = { mean, size: mean ** 2 / spread };
  return {
    kind: "corrected",
    events,
    corrected: events + toCome,
    lo: events + negativeBinomialQuantile((1 - level) / 2, shape),
    hi: events + negativeBinomialQuantile((1 + level) / 2, shape),
    level,
  };
}

export interface CorrectedCountInput {
  readonly periods: readonly ReportedPeriod[];
  readonly delay: EstimatedDelay;
  readonly fewestTogether: number;
  readonly level: number;
}

export interface ReportedPeriod {
  /** Days ago of each day of the period; the last day of which anything is known is 0. */
  readonly ages: readonly number[];
  readonly reports: number;
}

export type CorrectedCount =
  | {
      readonly kind: "corrected";
      /** On record by now. */
      readonly events: number;
      /** Expected once all are reported. */
      readonly corrected: number;
      readonly lo: number;
      readonly hi: number;
      readonly level: number;
    }
  | { readonly kind: "too-recent"; readonly events: number };

/** Jeffreys' prior for a Poisson rate adds half an event. */
const half = 0.5;

/**
 * Variance of the number to come that stems from the delay distribution alone. The logarithms of its values at two
 * delays share all later steps, so their covariance is the relative variance at the longer one.
 */
function delayVariance(joined: readonly JoinedPeriod[]): number {
  const pulls = joined
    .flatMap(({ reports, days, share }) =>
      days.map(({ age, within, relativeVariance }) => ({
        age,
        relativeVariance,
        pull: ((reports + half) * days.length * within) / share ** 2,
      })),
    )
    .sort((a, b) => a.age - b.age);
  let younger = 0;
  let variance = 0;
  for (const { pull, relativeVariance } of pulls) {
    variance += relativeVariance * (pull ** 2 + 2 * pull * younger);
    younger += pull;
  }
  return variance;
}
