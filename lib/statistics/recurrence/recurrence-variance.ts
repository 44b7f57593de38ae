import type { RecurrenceTimeline } from "./recurrence-timeline";

/**
 * `robust` lets units differ and their events come in clusters; it is never negative (Lawless–Nadeau).
 * `nelson` is the unbiased form of the same idea; it can come out negative, and needs every unit watched from before the first event.
 * `poisson` believes that all units fail alike and independently; too narrow where some are lemons.
 */
export type RecurrenceVariance = "robust" | "nelson" | "poisson";

/**
 * Variance of the mean cumulative function at each moment of the timeline.
 * Sources: Lawless and Nadeau (1995), Technometrics 37, 158-168; Nelson (1995), Technometrics 37, 147-157.
 */
export function recurrenceVariances(timeline: RecurrenceTimeline, variance: RecurrenceVariance): number[] {
  switch (variance) {
    case "robust":
      return robustVariances(timeline);
    case "nelson":
      return nelsonVariances(timeline);
    case "poisson":
      return poissonVariances(timeline);
  }
}

/**
 * The sum over units of each unit's squared residual, where a unit at risk gains (its events − the mean) / at risk
 * at each moment. Kept in running form: at a moment every unit at risk loses the same `share`, so the squares change by
 * a formula in the sum of residuals, which itself changes only when units leave; only units with events are visited.
 */
function robustVariances({ moments, histories }: RecurrenceTimeline): number[] {
  const gained = new Float64Array(histories);
  /** Sum of shares lost up to, but not including, each moment. */
  const lostBefore = new Float64Array(moments.length + 1);
  let residuals = 0;
  let squares = 0;
  return moments.map(({ atRisk, size, hits, leaving }, moment) => {
    const share = size / (atRisk * atRisk);
    const lost = lostBefore[moment] ?? 0;
    squares += share * share * atRisk - 2 * share * residuals;
    for (const { history, count, firstMoment, size: own } of hits) {
      const gain = own / atRisk;
      const residual = (gained[history] ?? 0) - (lost - (lostBefore[firstMoment] ?? 0));
      squares += count * gain * (2 * residual + gain - 2 * share);
      gained[history] = (gained[history] ?? 0) + gain;
    }
    lostBefore[moment + 1] = lost + share;
    for (const { history, count, firstMoment } of leaving) {
      residuals -= count * ((gained[history] ?? 0) - (lost + share - (lostBefore[firstMoment] ?? 0)));
    }
    return Math.max(0, squares);
  });
}

/**
 * Variance of each mean increment plus twice its covariances with the earlier ones, each an unbiased sample
 * covariance over the units at risk at the later age.
 */
function nelsonVariances({ moments, histories }: RecurrenceTimeline): number[] {
  if (moments.some(({ leaving }) => leaving.some(({ firstMoment }) => firstMoment > 0))) {
    throw new RangeError(
      'variance "nelson" needs every unit watched from before the first event; use "robust" for late entry',
    );
  }
  const gained = new Float64Array(histories);
  let gainedAtRisk = 0;
  let variance = 0;
  return moments.map(({ atRisk, size, hits, leaving }) => {
    const mean = size / atRisk;
    let squares = 0;
    let products = 0;
    for (const { history, count, size: own } of hits) {
      squares += count * own * own;
      products += count * own * (gained[history] ?? 0);
    }
    variance += (squares - atRisk * mean * mean) / (atRisk * (atRisk - 1));
    variance += (2 * (products - mean * gainedAtRisk)) / (atRisk - 1);
    for (const { history, count, size: own } of hits) {
      gained[history] = (gained[history] ?? 0) + own / atRisk;
      gainedAtRisk += (count * own) / atRisk;
    }
    for (const { history, count } of leaving) gainedAtRisk -= count * (gained[history] ?? 0);
    return variance;
  });
}

function poissonVariances({ moments }: RecurrenceTimeline): number[] {
  let variance = 0;
  return moments.map(({ atRisk, hits }) => {
    variance += hits.reduce((sum, { count, size }) => sum + count * size * size, 0) / (atRisk * atRisk);
    return variance;
  });
}
