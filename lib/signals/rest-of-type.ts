import { type BlockRange, type BlockSums, baselineOf, fewestUnitWeeks, type Span, sumOf } from "./block-sums";
import { ageBandCount } from "./weeks";

/**
 * What the machines of one type say about one word at each block: events and unit-weeks by age over the baseline, all
 * models together but those that seem not to have the component at all.
 */
export interface RestOfType {
  readonly span: (block: number) => Span | undefined;
  /** Events and unit-weeks of the baseline before a block, by age band. */
  readonly events: (block: number) => Float64Array;
  readonly exposure: (block: number) => Float64Array;
  /** The same over the whole record, all models together. */
  readonly whole: () => { readonly events: Float64Array; readonly exposure: Float64Array };
  readonly has: (model: number, block: number) => boolean;
}

export interface ModelSums {
  readonly exposure: BlockSums;
  /** Undefined where the model never had any. */
  readonly events: BlockSums | undefined;
}

/** A model without a single event where this many were expected (chance 1 in 1,000) is taken not to have the component. */
const expectedOfAbsent = Math.log(1000);

export function restOfType(range: BlockRange, models: ReadonlyMap<number, ModelSums>): RestOfType {
  const spans = Array.from({ length: range.count }, (_, block) => baselineOf(block));
  const blocks = spans.map((span) => (span === undefined ? undefined : baselineSums(models, span)));
  const empty = new Float64Array(ageBandCount);
  return {
    span: (block) => spans[block],
    events: (block) => blocks[block]?.events ?? empty,
    exposure: (block) => blocks[block]?.exposure ?? empty,
    whole: () => {
      const all: Span = { from: 0, until: range.count };
      return { events: totals(models, all, "events"), exposure: totals(models, all, "exposure") };
    },
    has: (model, block) => blocks[block]?.without.has(model) !== true,
  };
}

interface BaselineSums {
  readonly events: Float64Array;
  readonly exposure: Float64Array;
  readonly without: ReadonlySet<number>;
}

function baselineSums(models: ReadonlyMap<number, ModelSums>, span: Span): BaselineSums {
  const everything: Span = { from: 0, until: span.until };
  const [events, exposure] = [totals(models, everything, "events"), totals(models, everything, "exposure")];
  const without = new Set<number>();
  for (const [model, sums] of models) {
    if (sums.events !== undefined && some(sums.events, everything)) continue;
    let expected = 0;
    for (let band = 0; band < ageBandCount; band++) {
      const rest = (exposure[band] ?? 0) - sumOf(sums.exposure, everything, band);
      if (rest >= fewestUnitWeeks) expected += (sumOf(sums.exposure, everything, band) * (events[band] ?? 0)) / rest;
    }
    if (expected >= expectedOfAbsent) without.add(model);
  }
  const having = new Map([...models].filter(([model]) => !without.has(model)));
  return { events: totals(having, span, "events"), exposure: totals(having, span, "exposure"), without };
}

function totals(models: ReadonlyMap<number, ModelSums>, span: Span, of: "events" | "exposure"): Float64Array {
  const sums = new Float64Array(ageBandCount);
  for (const model of models.values()) {
    const own = model[of];
    if (own === undefined) continue;
    for (let band = 0; band < ageBandCount; band++) sums[band] = (sums[band] ?? 0) + sumOf(own, span, band);
  }
  return sums;
}

function some(sums: BlockSums, span: Span): boolean {
  for (let band = 0; band < ageBandCount; band++) if (sumOf(sums, span, band) > 0) return true;
  return false;
}
