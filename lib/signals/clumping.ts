import { pearsonWithin } from "@/lib/statistics/multiplicity/pearson-within";
import { type BlockRange, baselineOf } from "./block-sums";
import { type ExposureWeeks, weeksOf } from "./exposure-weeks";
import type { Events } from "./line-events";
import type { SignalRecord, WordKind } from "./signal-record";
import type { MachineGroup, TypeRecord } from "./type-record";
import { weeksPerBlock } from "./weeks";

/** Below this many standard deviations above chance, nothing is said to clump: chance of 1 in 100. */
const leastDeviation = 2.326;

interface Growing {
  statistic: number;
  mean: number;
  variance: number;
}

/**
 * By block, variance of a usual week's count over its mean, as all models of the company show it in the blocks before: jobs
 * that come in clumps (one customer with several machines, a cold week, jobs entered in batches) must not pass for a
 * change. Each model is held against its own quarter, so that models that differ, or one that got worse, do not count as clumping.
 * 1 where chance explains what is seen.
 * @param seasonOf  by week of the record, how many times the year's mean is expected
 * Source: see lib/statistics/multiplicity/pearson-within.ts.
 * Checked: tests/signals/clumping.test.ts, by recovery of known clumps.
 */
export function clumpingByBlock(
  record: SignalRecord,
  types: readonly TypeRecord[],
  range: BlockRange,
  seasonOf: (type: TypeRecord) => Float64Array,
): Readonly<Record<WordKind, readonly number[]>> {
  const blocks = () => Array.from({ length: range.count }, (): Growing => ({ statistic: 0, mean: 0, variance: 0 }));
  const sums = { component: blocks(), fault_code: blocks(), symptom: blocks() };
  const counts = new Float64Array(weeksOf(record));
  for (const type of types) {
    const season = seasonOf(type);
    const weightsOf = new Map([...type.models].map(([model, exposure]) => [model, weeklyWeights(exposure, season)]));
    for (const group of [type, ...type.makers]) addGroup(group, weightsOf, { record, range, sums, counts });
  }
  const of = (kind: WordKind) => sums[kind].map((_, block) => ratioBefore(sums[kind], block));
  return { component: of("component"), fault_code: of("fault_code"), symptom: of("symptom") };
}

interface Adding {
  readonly record: SignalRecord;
  readonly range: BlockRange;
  readonly sums: Readonly<Record<WordKind, readonly Growing[]>>;
  /** Room for the counts of one model under one word, all 0. */
  readonly counts: Float64Array;
}

function addGroup(
  { lines }: MachineGroup,
  weightsOf: ReadonlyMap<number, Float64Array>,
  { record, range, sums, counts }: Adding,
): void {
  for (const { kind, eventsOf } of lines) {
    for (const [model, events] of eventsOf) {
      const weights = weightsOf.get(model);
      if (weights === undefined || events.until - events.from < 2) continue;
      fill(counts, events, record);
      for (let block = 0; block < range.count; block++)
        addBlock(sums[kind][block], counts, weights, block, { record, range });
      fill(counts, events, record, true);
    }
  }
}

function fill(
  counts: Float64Array,
  { columns, from, until }: Events,
  { firstWeek }: SignalRecord,
  isOver = false,
): void {
  for (let at = from; at < until; at++) {
    const place = (columns.failedWeek[at] ?? 0) - firstWeek;
    if (place >= 0 && place < counts.length)
      counts[place] = isOver ? 0 : (counts[place] ?? 0) + (columns.jobs[at] ?? 0);
  }
}

function addBlock(
  sum: Growing | undefined,
  counts: Float64Array,
  weights: Float64Array,
  block: number,
  { record, range }: Pick<Adding, "record" | "range">,
): void {
  const start = (range.first + block) * weeksPerBlock - record.firstWeek;
  const [from, until] = [Math.max(0, start), Math.min(counts.length, start + weeksPerBlock)];
  let events = 0;
  for (let week = from; week < until; week++) events += counts[week] ?? 0;
  if (sum === undefined || events < 2) return;
  const found = pearsonWithin({ counts: counts.subarray(from, until), weights: weights.subarray(from, until) });
  if (found === undefined) return;
  sum.statistic += found.statistic;
  sum.mean += found.mean;
  sum.variance += found.variance;
}

function weeklyWeights({ starts, unitWeeks }: ExposureWeeks, season: Float64Array): Float64Array {
  return Float64Array.from({ length: starts.length - 1 }, (_, week) => {
    let units = 0;
    for (let entry = starts[week] ?? 0; entry < (starts[week + 1] ?? 0); entry++) units += unitWeeks[entry] ?? 0;
    return units * (season[week] ?? 1);
  });
}

function ratioBefore(sums: readonly Growing[], block: number): number {
  const span = baselineOf(block);
  if (span === undefined) return 1;
  let [statistic, mean, variance] = [0, 0, 0];
  for (const one of sums.slice(span.from, span.until)) {
    statistic += one.statistic;
    mean += one.mean;
    variance += one.variance;
  }
  if (!(variance > 0) || statistic - mean < leastDeviation * Math.sqrt(variance)) return 1;
  return statistic / mean;
}
