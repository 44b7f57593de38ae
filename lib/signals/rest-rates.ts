import { fewestUnitWeeks, type Span } from "./block-sums";
import type { ModelSums, RestOfType } from "./rest-of-type";
import { ageBandCount } from "./weeks";

/** How a group itself did over the baseline of one block, at ages that are covered, beside what all others predict. */
export interface AgainstRest {
  readonly observed: number;
  readonly expected: number;
  /** Variance of the expectation over its square, from the number of events that it rests on. */
  readonly relativeVariance: number;
}

/** Where nothing can be said of an age, since the others were not watched there long enough. */
export const uncovered = -1;

/** A large company has millions of baselines, so rates are written into one long row of numbers instead of being made. */
export interface RateRow {
  readonly rates: Float64Array;
  /** Place of the first age band. */
  readonly at: number;
}

/**
 * What the rest of the fleet predicts for a group: indirect standardisation by age, with the group itself left out.
 * @param into  takes the rates by age of all others, per unit-week, or `uncovered`
 * Source: Breslow & Day (1987), Statistical Methods in Cancer Research II, chapter 2; variance from Poisson counts.
 * Checked: tests/signals/cell-weeks.test.ts, by hand; tests/signals/by-definition.test.ts, by separate code.
 */
export function againstRest(
  type: RestOfType,
  { exposure, events }: ModelSums,
  block: number,
  span: Span,
  into?: RateRow,
): AgainstRest {
  const at = block * ageBandCount;
  const from = span.from * ageBandCount;
  const until = span.until * ageBandCount;
  let observed = 0;
  let expected = 0;
  let variance = 0;
  for (let band = 0; band < ageBandCount; band++) {
    const ownWeeks = (exposure.before[until + band] ?? 0) - (exposure.before[from + band] ?? 0);
    const ownEvents = events === undefined ? 0 : (events.before[until + band] ?? 0) - (events.before[from + band] ?? 0);
    const othersWeeks = (type.exposure[at + band] ?? 0) - ownWeeks;
    const isCovered = othersWeeks >= fewestUnitWeeks;
    const rate = isCovered ? Math.max(0, (type.events[at + band] ?? 0) - ownEvents) / othersWeeks : uncovered;
    if (into !== undefined) into.rates[into.at + band] = rate;
    if (!isCovered) continue;
    observed += ownEvents;
    expected += ownWeeks * rate;
    variance += (ownWeeks * ownWeeks * rate) / othersWeeks;
  }
  return { observed, expected, relativeVariance: expected > 0 ? variance / expected ** 2 : 0 };
}
