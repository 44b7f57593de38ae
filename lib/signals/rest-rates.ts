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

/** Rates by age of all others over the baseline of one block, and how the group itself did then. */
export interface RestRates extends AgainstRest {
  /** Per unit-week; 0 at ages that are not covered. */
  readonly rates: readonly number[];
  /** Of ages, whether the others were watched there long enough to say anything. */
  readonly covered: readonly boolean[];
}

/**
 * What the rest of the fleet predicts for a group: indirect standardisation by age, with the group itself left out.
 * Source: Breslow & Day (1987), Statistical Methods in Cancer Research II, chapter 2; variance from Poisson counts.
 * Checked: tests/signals/rest-rates.test.ts, by hand.
 */
export function restRates(type: RestOfType, group: ModelSums, block: number, span: Span): RestRates {
  const rest = restOf(type, group, block, span);
  // Plain arrays: a company has millions of these, and a typed array costs more to make than to fill.
  const rates: number[] = [];
  const covered: boolean[] = [];
  for (let band = 0; band < ageBandCount; band++) {
    const rate = rateAt(rest, band);
    rates.push(Math.max(0, rate));
    covered.push(rate >= 0);
  }
  return { ...againstRest(type, group, block, span), rates, covered };
}

/** The same without the rates themselves, for the many groups of which no more is asked. */
export function againstRest(type: RestOfType, group: ModelSums, block: number, span: Span): AgainstRest {
  const rest = restOf(type, group, block, span);
  let [observed, expected, variance] = [0, 0, 0];
  for (let band = 0; band < ageBandCount; band++) {
    const rate = rateAt(rest, band);
    if (rate < 0) continue;
    const own = ownUnitWeeks(rest, band);
    observed += ownEvents(rest, band);
    expected += own * rate;
    variance += (own * own * rate) / othersUnitWeeks(rest, band);
  }
  return { observed, expected, relativeVariance: expected > 0 ? variance / expected ** 2 : 0 };
}

/** Events expected of the group in one block by the rates of all others over the block's baseline. */
export function expectedInBlock(type: RestOfType, group: ModelSums, block: number, span: Span): number {
  const rest = restOf(type, group, block, span);
  const { before } = group.exposure;
  const now = block * ageBandCount;
  let expected = 0;
  for (let band = 0; band < ageBandCount; band++) {
    const unitWeeks = (before[now + ageBandCount + band] ?? 0) - (before[now + band] ?? 0);
    if (unitWeeks > 0) expected += unitWeeks * Math.max(0, rateAt(rest, band));
  }
  return expected;
}

/** All machines of the type and the group among them, over one baseline. */
interface Rest {
  readonly events: Float64Array;
  readonly exposure: Float64Array;
  readonly own: ModelSums;
  /** Where the baseline begins and ends in the group's sums. */
  readonly from: number;
  readonly until: number;
}

function restOf(type: RestOfType, own: ModelSums, block: number, { from, until }: Span): Rest {
  return {
    events: type.events(block),
    exposure: type.exposure(block),
    own,
    from: from * ageBandCount,
    until: until * ageBandCount,
  };
}

/** Per unit-week of all others; below 0 at ages at which they were not watched long enough. */
function rateAt(rest: Rest, band: number): number {
  const unitWeeks = othersUnitWeeks(rest, band);
  if (unitWeeks < fewestUnitWeeks) return -1;
  return Math.max(0, (rest.events[band] ?? 0) - ownEvents(rest, band)) / unitWeeks;
}

function othersUnitWeeks(rest: Rest, band: number): number {
  return (rest.exposure[band] ?? 0) - ownUnitWeeks(rest, band);
}

function ownUnitWeeks({ own: { exposure }, from, until }: Rest, band: number): number {
  return (exposure.before[until + band] ?? 0) - (exposure.before[from + band] ?? 0);
}

function ownEvents({ own: { events }, from, until }: Rest, band: number): number {
  return events === undefined ? 0 : (events.before[until + band] ?? 0) - (events.before[from + band] ?? 0);
}
