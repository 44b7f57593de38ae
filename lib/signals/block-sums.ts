import type { Events } from "./line-events";
import { ageBandCount, ageBandOfWeeks, blockOf, weeksPerYear } from "./weeks";

/** Sums by block of 13 weeks and age band, cumulated over blocks, so that any baseline is one subtraction. */
export interface BlockSums {
  /** Before each block: events or unit-weeks of all earlier blocks of the record, by age band. */
  readonly before: Float64Array;
}

/** First block of the record and how many there are; the last `ahead` of them come after it and are only foreseen. */
export interface BlockRange {
  readonly first: number;
  readonly count: number;
  readonly ahead: number;
}

/** All that is on record. */
export function wholeOf({ count, ahead }: BlockRange): Span {
  return { from: 0, until: count - ahead };
}

/** Blocks, counted from the first, from which rates are learnt. */
export interface Span {
  readonly from: number;
  readonly until: number;
}

const blocksPerYear = 4;
const mostYears = 3;

/** Unit-weeks that others must have spent at an age before a rate is taken from them: a year of one unit. */
export const fewestUnitWeeks = weeksPerYear;

export function blockRange(
  { firstWeek, lastWeek }: { readonly firstWeek: number; readonly lastWeek: number },
  ahead: number,
): BlockRange {
  const first = blockOf(firstWeek);
  return { first, count: Math.max(0, blockOf(lastWeek) - first + 1) + ahead, ahead };
}

/**
 * Earlier blocks that the rates of a block are learnt from: whole years, so that no season weighs more than another, at
 * most three, ending a block before, when all their jobs are closed. Undefined until there is a year of them.
 */
export function baselineOf(block: number): Span | undefined {
  const until = block - 1;
  const years = Math.min(mostYears, Math.floor(until / blocksPerYear));
  return years < 1 ? undefined : { from: until - years * blocksPerYear, until };
}

/**
 * Jobs by the block of their call and the age of their machine.
 * @param into    sums of the same range that are needed no more, to be written over
 * @param counts  of the entries, by their place in the columns; undefined: all
 */
export function blockSums(
  range: BlockRange,
  events: readonly Events[],
  into?: BlockSums,
  counts?: (at: number) => boolean,
): BlockSums {
  const before = into?.before.fill(0) ?? new Float64Array((range.count + 1) * ageBandCount);
  let [touched, firstPlace] = [0, before.length]; // one bit for each band; most groups have events at few ages
  for (const { columns, from, until } of events) {
    const { failedWeek, inServiceWeek, jobs } = columns;
    for (let at = from; at < until; at++) {
      const week = failedWeek[at] ?? 0;
      const block = blockOf(week) - range.first;
      if (block < 0 || block >= range.count || counts?.(at) === false) continue;
      const band = ageBandOfWeeks(week - (inServiceWeek[at] ?? 0));
      const place = (block + 1) * ageBandCount + band;
      before[place] = (before[place] ?? 0) + (jobs[at] ?? 0);
      touched |= 1 << band;
      firstPlace = Math.min(firstPlace, (block + 1) * ageBandCount);
    }
  }
  for (let band = 0; band < ageBandCount; band++) {
    if ((touched & (1 << band)) === 0) continue;
    for (let place = firstPlace + ageBandCount + band; place < before.length; place += ageBandCount)
      before[place] = (before[place] ?? 0) + (before[place - ageBandCount] ?? 0);
  }
  return { before };
}

const sumsPerChunk = 1000;

/**
 * Room for many sums of one range, cut from few large pieces: tens of thousands of small ones would keep the engine busy
 * with tidying up.
 */
export function sumsRoom(range: BlockRange): () => BlockSums {
  const size = (range.count + 1) * ageBandCount;
  let [chunk, taken] = [new Float64Array(0), 0];
  return () => {
    if (taken + size > chunk.length) [chunk, taken] = [new Float64Array(size * sumsPerChunk), 0];
    taken += size;
    return { before: chunk.subarray(taken - size, taken) };
  };
}

/** @param before  each block's own sums, at the place after its own; written over */
export function cumulated(before: Float64Array): BlockSums {
  for (let place = ageBandCount; place < before.length; place++) {
    before[place] = (before[place] ?? 0) + (before[place - ageBandCount] ?? 0);
  }
  return { before };
}

/** Sum of one age band over the blocks of a span. */
export function sumOf({ before }: BlockSums, { from, until }: Span, band: number): number {
  return (before[until * ageBandCount + band] ?? 0) - (before[from * ageBandCount + band] ?? 0);
}

/** @param into  sums of the same range that are needed no more, to be written over */
export function addedTogether(parts: readonly BlockSums[], range: BlockRange, into?: BlockSums): BlockSums {
  const before = into?.before.fill(0) ?? new Float64Array((range.count + 1) * ageBandCount);
  for (const part of parts) {
    for (let place = 0; place < before.length; place++) {
      before[place] = (before[place] ?? 0) + (part.before[place] ?? 0);
    }
  }
  return { before };
}
