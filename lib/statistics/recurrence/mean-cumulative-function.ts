import { normalQuantile } from "../normal";
import { requireProbability } from "../require";
import { type Limits, limits, NEGATIVE_VARIANCE, NOBODY_LEFT } from "../survival/limits";
import { recurrenceTimeline } from "./recurrence-timeline";
import { type RecurrenceVariance, recurrenceVariances } from "./recurrence-variance";
import type { UnitHistory } from "./unit-history";

/**
 * Mean number of events (or mean cost) per unit up to each age, for units that can fail again and again.
 * Needs no assumption about how events of one unit hang together; a straight line means that age does not matter.
 * @param histories   one per unit, or per group of units with the same history
 * @param confidence  two-sided level in (0, 1) of the pointwise limits; no default
 * @param variance    how the error is estimated; no default, see `RecurrenceVariance`
 * @param interval    `log` stays above 0; `plain` does not; no default
 * @returns one step per age with events; `no-events`: nothing happened up to lastAge; `no-exposure`: nobody was watched for any time
 * @throws RangeError for an argument outside its range
 * Source: Nelson (2003), Recurrent Events Data Analysis; variances as named in `recurrenceVariances`.
 * Checked: tests/statistics/recurrence/mean-cumulative-function.test.ts, R survfit with id, and the definition.
 */
export function meanCumulativeFunction(histories: readonly UnitHistory[], options: RecurrenceOptions): MeanCumulative {
  requireProbability("confidence", options.confidence);
  const timeline = recurrenceTimeline(histories);
  const { lastAge, units } = timeline;
  if (timeline.moments.length === 0)
    return lastAge > 0 ? { kind: "no-events", lastAge, units } : { kind: "no-exposure" };
  const variances = recurrenceVariances(timeline, options.variance);
  const multiplier = -normalQuantile((1 - options.confidence) / 2);
  let mean = 0;
  const steps = timeline.moments.map(({ age, atRisk, events, size }, i) => {
    mean += size / atRisk;
    const around = limitsAround(mean, variances[i] ?? 0, multiplier, options.interval);
    return { age, atRisk, events, size, mean, limits: around };
  });
  return { kind: "curve", steps, lastAge, units };
}

export interface RecurrenceOptions {
  readonly confidence: number;
  readonly variance: RecurrenceVariance;
  readonly interval: "plain" | "log";
}

export interface RecurrenceStep {
  readonly age: number;
  /** Units watched at this age. */
  readonly atRisk: number;
  readonly events: number;
  /** Sizes of those events added up. */
  readonly size: number;
  /** Mean number (or cost) per unit up to and including this age. */
  readonly mean: number;
  /** None where `nelson` came out negative, or had a single unit left to judge by. */
  readonly limits: Limits;
}

export type MeanCumulative =
  | {
      readonly kind: "curve";
      readonly steps: readonly RecurrenceStep[];
      readonly lastAge: number;
      readonly units: number;
    }
  | { readonly kind: "no-events"; readonly lastAge: number; readonly units: number }
  | { readonly kind: "no-exposure" };

function limitsAround(mean: number, variance: number, multiplier: number, interval: "plain" | "log"): Limits {
  if (!Number.isFinite(variance)) return NOBODY_LEFT;
  if (variance < 0) return NEGATIVE_VARIANCE;
  const error = Math.sqrt(variance);
  const arm = multiplier * error;
  if (interval === "plain" || mean === 0) return limits(error, mean - arm, mean + arm);
  const spread = Math.exp(arm / mean);
  return limits(error, mean / spread, mean * spread);
}
