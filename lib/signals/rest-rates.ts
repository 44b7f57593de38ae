import { fewestUnitWeeks, type Span } from "./block-sums";
import type { ModelSums, RestOfType } from "./rest-of-type";
import { ageBandCount } from "./weeks";

/** Rates by age of all others over the baseline of one block, and how the group itself did then. */
export interface RestRates {
  /** Per unit-week; 0 at ages that are not covered. */
  readonly rates: readonly number[];
  /** Of ages, whether the others were watched there long enough to say anything. */
  readonly covered: readonly boolean[];
  /** Of the group over the baseline, at covered ages. */
  readonly observed: number;
  readonly expected: number;
  /** Variance of the expectation over its square, from the number of events that it rests on. */
  readonly relativeVariance: number;
}

/**
 * What the rest of the fleet predicts for a group: indirect standardisation by age, with the group itself left out.
 * Source: Breslow & Day (1987), Statistical Methods in Cancer Research II, chapter 2; variance from Poisson counts.
 * Checked: tests/signals/rest-rates.test.ts, by hand.
 */
export function restRates(type: RestOfType, group: ModelSums, block: number, span: Span): RestRates {
  const [events, exposure, bands] = [type.events(block), type.exposure(block), ageBandCount];
  const [ownEvents, ownExposure] = [group.events?.before, group.exposure.before];
  const [from, until] = [span.from * bands, span.until * bands];
  // Plain arrays: a company has millions of these, and a typed array costs more to make than to fill.
  const rates: number[] = [];
  const covered: boolean[] = [];
  let [observed, expected, variance] = [0, 0, 0];
  for (let band = 0; band < bands; band++) {
    const own = (ownExposure[until + band] ?? 0) - (ownExposure[from + band] ?? 0);
    const rest = (exposure[band] ?? 0) - own;
    covered.push(rest >= fewestUnitWeeks);
    if (rest < fewestUnitWeeks) {
      rates.push(0);
      continue;
    }
    const happened = ownEvents === undefined ? 0 : (ownEvents[until + band] ?? 0) - (ownEvents[from + band] ?? 0);
    const others = Math.max(0, (events[band] ?? 0) - happened);
    rates.push(others / rest);
    observed += happened;
    expected += own * (others / rest);
    variance += (own / rest) ** 2 * others;
  }
  return { rates, covered, observed, expected, relativeVariance: expected > 0 ? variance / expected ** 2 : 0 };
}

/**
 * Events expected of the group in one block by the rates of all others over the block's baseline: what the rates of
 * `restRates` come to, for the many groups of which no more than this is asked.
 */
export function expectedInBlock(type: RestOfType, group: ModelSums, block: number, span: Span): number {
  const [events, exposure, bands] = [type.events(block), type.exposure(block), ageBandCount];
  const [ownEvents, ownExposure] = [group.events?.before, group.exposure.before];
  const [from, until, now] = [span.from * bands, span.until * bands, block * bands];
  let expected = 0;
  for (let band = 0; band < bands; band++) {
    const unitWeeks = (ownExposure[now + bands + band] ?? 0) - (ownExposure[now + band] ?? 0);
    if (unitWeeks === 0) continue;
    const rest = (exposure[band] ?? 0) - (ownExposure[until + band] ?? 0) + (ownExposure[from + band] ?? 0);
    if (rest < fewestUnitWeeks) continue;
    const happened = ownEvents === undefined ? 0 : (ownEvents[until + band] ?? 0) - (ownEvents[from + band] ?? 0);
    expected += unitWeeks * (Math.max(0, (events[band] ?? 0) - happened) / rest);
  }
  return expected;
}
