import { type BlockRange, type BlockSums, baselineOf, fewestUnitWeeks, type Span, wholeOf } from "./block-sums";
import { ageBandCount } from "./weeks";

/**
 * What the machines of one type say about one word at each block: events and unit-weeks by age over the baseline, all
 * models together but those that seem not to have the component at all.
 */
export interface RestOfType {
  /** By block: what rates are learnt from; undefined where there is too little. */
  readonly spans: readonly (Span | undefined)[];
  /** Events and unit-weeks of the baseline before each block, at block × number of bands + band. */
  readonly events: Float64Array;
  readonly exposure: Float64Array;
  /** The same over the whole record, all models together, by band. */
  readonly whole: () => { readonly events: Float64Array; readonly exposure: Float64Array };
  readonly has: (model: number, block: number) => boolean;
  /** At every block every model has it, as far as can be seen. */
  readonly allHave: boolean;
}

export interface ModelSums {
  readonly exposure: BlockSums;
  /** Undefined where the model never had any. */
  readonly events: BlockSums | undefined;
}

/** A model without a single event where this many were expected (chance 1 in 1,000) is taken not to have the component. */
const expectedOfAbsent = Math.log(1000);

/** @param has  whether a model has it at a block, where that is known; undefined: it is learnt from the models' own events */
export function restOfType(
  range: BlockRange,
  models: ReadonlyMap<number, ModelSums>,
  has?: (model: number, block: number) => boolean,
): RestOfType {
  const spans = Array.from({ length: range.count }, (_, block) => baselineOf(block));
  const everything = sumsOfModels(range, models);
  const without = spans.map((span, block) => {
    if (span === undefined) return undefined;
    if (has === undefined) return absent(models, everything, span.until);
    return new Set([...models.keys()].filter((model) => !has(model, block)));
  });
  const events = new Float64Array(range.count * ageBandCount);
  const exposure = new Float64Array(range.count * ageBandCount);
  const away = { events: new Float64Array(ageBandCount), exposure: new Float64Array(ageBandCount) };
  spans.forEach((span, block) => {
    if (span === undefined) return;
    away.events.fill(0);
    away.exposure.fill(0);
    for (const model of without[block] ?? []) addSpan(away, models.get(model), span);
    for (let band = 0; band < ageBandCount; band++) {
      const place = block * ageBandCount + band;
      events[place] = within(everything.events, span, band) - (away.events[band] ?? 0);
      exposure[place] = within(everything.exposure, span, band) - (away.exposure[band] ?? 0);
    }
  });
  return {
    spans,
    events,
    exposure,
    whole: () => ({ events: lastOf(everything.events, range), exposure: lastOf(everything.exposure, range) }),
    allHave: without.every((models) => models === undefined || models.size === 0),
    has: (model, block) => without[block]?.has(model) !== true,
  };
}

function lastOf(sums: Float64Array, range: BlockRange): Float64Array {
  const { until } = wholeOf(range);
  return sums.slice(until * ageBandCount, (until + 1) * ageBandCount);
}

/** Cumulated sums of all models together. */
interface Everything {
  readonly events: Float64Array;
  readonly exposure: Float64Array;
}

function sumsOfModels(range: BlockRange, models: ReadonlyMap<number, ModelSums>): Everything {
  const places = (range.count + 1) * ageBandCount;
  const sums: Everything = { events: new Float64Array(places), exposure: new Float64Array(places) };
  for (const { events, exposure } of models.values()) {
    addTo(sums.exposure, exposure.before);
    if (events !== undefined) addTo(sums.events, events.before);
  }
  return sums;
}

function addTo(sums: Float64Array, more: Float64Array): void {
  for (let place = 0; place < sums.length; place++) sums[place] = (sums[place] ?? 0) + (more[place] ?? 0);
}

/** Models that had none of the events before a block, although others would have had some. */
function absent(models: ReadonlyMap<number, ModelSums>, all: Everything, until: number): ReadonlySet<number> {
  const without = new Set<number>();
  const at = until * ageBandCount;
  for (const [model, { events, exposure }] of models) {
    if (events !== undefined && hasAny(events, at)) continue;
    let expected = 0;
    for (let band = 0; band < ageBandCount; band++) {
      const own = exposure.before[at + band] ?? 0;
      const rest = (all.exposure[at + band] ?? 0) - own;
      if (rest >= fewestUnitWeeks) expected += (own * (all.events[at + band] ?? 0)) / rest;
    }
    if (expected >= expectedOfAbsent) without.add(model);
  }
  return without;
}

function hasAny({ before }: BlockSums, at: number): boolean {
  for (let band = 0; band < ageBandCount; band++) if ((before[at + band] ?? 0) > 0) return true;
  return false;
}

function addSpan(sums: Everything, model: ModelSums | undefined, span: Span): void {
  if (model === undefined) return;
  for (let band = 0; band < ageBandCount; band++) {
    sums.exposure[band] = (sums.exposure[band] ?? 0) + within(model.exposure.before, span, band);
    if (model.events !== undefined)
      sums.events[band] = (sums.events[band] ?? 0) + within(model.events.before, span, band);
  }
}

function within(before: Float64Array, { from, until }: Span, band: number): number {
  return (before[until * ageBandCount + band] ?? 0) - (before[from * ageBandCount + band] ?? 0);
}
