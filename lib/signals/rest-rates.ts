import { fewestUnitWeeks, type Span, sumOf } from "./block-sums";
import type { Cause } from "./causes-of-symptom";
import type { ModelSums, RestOfType } from "./rest-of-type";
import type { Line } from "./type-record";
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
export function againstLine(
  line: Pick<Line, "rest" | "causes">,
  { models, sums }: { readonly models: readonly number[]; readonly sums: ModelSums },
  block: number,
  span: Span,
  into?: RateRow,
): AgainstRest {
  const apart = line.causes?.apartAt[block] ?? [];
  return apart.length === 0
    ? againstRest(line.rest, sums, block, span, into)
    : againstCauses(line.rest, apart, { models, sums }, block, span, into);
}

function againstRest(
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

/** The same, where some causes count only among the models that can have them, and for a group that can. */
function againstCauses(
  type: RestOfType,
  causes: readonly Cause[],
  { models, sums: { exposure, events } }: { readonly models: readonly number[]; readonly sums: ModelSums },
  block: number,
  span: Span,
  into?: RateRow,
): AgainstRest {
  const at = block * ageBandCount;
  const having = causes.map(({ rest }) => models.filter((model) => rest.has(model, block)).length);
  // Models of one maker that are built differently have no one rate by age; each is followed by itself.
  const isMixed = having.some((count) => count > 0 && count < models.length);
  let [observed, expected, variance] = [0, 0, 0];
  for (let band = 0; band < ageBandCount; band++) {
    const ownWeeks = sumOf(exposure, span, band);
    const ownEvents = events === undefined ? 0 : sumOf(events, span, band);
    const othersWeeks = (type.exposure[at + band] ?? 0) - ownWeeks;
    let isCovered = !isMixed && othersWeeks >= fewestUnitWeeks;
    let common = (type.events[at + band] ?? 0) - ownEvents;
    let [rate, doubt] = [0, 0];
    for (let i = 0; i < causes.length && isCovered; i++) {
      const cause = causes[i];
      if (cause === undefined) continue;
      const others = (cause.rest.events[at + band] ?? 0) - eventsIn(cause, models, span, band);
      common -= others;
      if (having[i] === 0) continue;
      const weeks = (cause.rest.exposure[at + band] ?? 0) - ownWeeks;
      isCovered = weeks >= fewestUnitWeeks;
      rate += Math.max(0, others) / weeks;
      doubt += Math.max(0, others) / weeks ** 2;
    }
    rate += Math.max(0, common) / othersWeeks;
    doubt += Math.max(0, common) / othersWeeks ** 2;
    if (into !== undefined) into.rates[into.at + band] = isCovered ? rate : uncovered;
    if (!isCovered) continue;
    observed += ownEvents;
    expected += ownWeeks * rate;
    variance += ownWeeks * ownWeeks * doubt;
  }
  return { observed, expected, relativeVariance: expected > 0 ? variance / expected ** 2 : 0 };
}

function eventsIn(cause: Cause, models: readonly number[], span: Span, band: number): number {
  let sum = 0;
  for (const model of models) {
    const own = cause.sumsOf(model)?.events;
    if (own !== undefined) sum += sumOf(own, span, band);
  }
  return sum;
}
