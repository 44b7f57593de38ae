import { type BlockSums, fewestUnitWeeks, type Span, sumOf } from "./block-sums";
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
  return line.causes === undefined
    ? againstRest(line.rest, sums, block, span, into)
    : againstCauses(line.causes, { models, sums }, block, span, into);
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

/** The same, where each cause counts only among the models that can have it, and for a group that can. */
function againstCauses(
  causes: readonly Cause[],
  { models, sums: { exposure, events } }: { readonly models: readonly number[]; readonly sums: ModelSums },
  block: number,
  span: Span,
  into?: RateRow,
): AgainstRest {
  const at = block * ageBandCount;
  const within = (sums: BlockSums | undefined, band: number) => (sums === undefined ? 0 : sumOf(sums, span, band));
  const own = causes.map(({ rest, sumsOf }) => ({
    rest,
    having: models.filter((model) => rest.has(model, block)).length,
    events: models.flatMap((model) => sumsOf(model)?.events ?? []),
  }));
  // Models of one maker that are built differently have no one rate by age; each is followed by itself.
  const isMixed = own.some(({ having }) => having > 0 && having < models.length);
  const its = own.filter(({ having }) => having > 0);
  let [observed, expected, variance] = [0, 0, 0];
  for (let band = 0; band < ageBandCount; band++) {
    const ownWeeks = within(exposure, band);
    const others = its.map(({ rest }) => (rest.exposure[at + band] ?? 0) - ownWeeks);
    const isCovered = !isMixed && others.every((weeks) => weeks >= fewestUnitWeeks);
    const rates = its.map(({ rest, events: parts }, i) => {
      const count = parts.reduce((sum, part) => sum + within(part, band), 0);
      return Math.max(0, (rest.events[at + band] ?? 0) - count) / (others[i] ?? 1);
    });
    const rate = isCovered ? rates.reduce((sum, one) => sum + one, 0) : uncovered;
    if (into !== undefined) into.rates[into.at + band] = rate;
    if (!isCovered) continue;
    observed += within(events, band);
    expected += ownWeeks * rate;
    variance += rates.reduce((sum, one, i) => sum + (ownWeeks * ownWeeks * one) / (others[i] ?? 1), 0);
  }
  return { observed, expected, relativeVariance: expected > 0 ? variance / expected ** 2 : 0 };
}
