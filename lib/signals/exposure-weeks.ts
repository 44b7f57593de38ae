import { type BlockRange, type BlockSums, baselineOf, cumulated, sumOf } from "./block-sums";
import type { Cohort, SignalRecord } from "./signal-record";
import { ageBandCount, ageBandOfWeeks, blockOf, weeksAhead } from "./weeks";

/**
 * Unit-weeks at risk of one group: of each week of the record, and of the half-year after it with the units that are in
 * service at its end, the age bands that hold any.
 */
export interface ExposureWeeks {
  /** For each week, where its entries begin; one more at the end. */
  readonly starts: Uint32Array;
  readonly bands: Uint8Array;
  readonly unitWeeks: Float64Array;
  readonly sums: BlockSums;
  readonly held: HeldPlaces;
}

/**
 * Blocks and ages that hold any, of blocks that have a baseline, ascending: the same for all words of the group, of which
 * a large company has hundreds of thousands, so they are looked up once.
 */
export interface HeldPlaces {
  /** Place in the sums: block × number of bands + band. */
  readonly places: Uint32Array;
  readonly unitWeeks: Float64Array;
  /** Of the same age in the baseline of that block. */
  readonly before: Float64Array;
}

type Weeks = Pick<SignalRecord, "firstWeek" | "lastWeek">;

export function weeksOf({ firstWeek, lastWeek }: Weeks): number {
  return Math.max(0, lastWeek - firstWeek + 1);
}

/**
 * A unit counts for the whole of each week in which it begins under observation, at its age in whole weeks.
 * @param cohorts  of the group
 * @param into     room to reckon in, as `denseWeeks` makes it: written over, so that thousands of groups need but one
 * @param weeksAfter  how far ahead it is reckoned: 0 where nobody asks for that
 */
export function exposureWeeks(
  record: Weeks,
  range: BlockRange,
  cohorts: readonly Cohort[],
  into?: Float64Array,
  weeksAfter = weeksAhead,
): ExposureWeeks {
  const ahead = { firstWeek: record.firstWeek, lastWeek: record.lastWeek + weeksAfter };
  const dense = into?.fill(0) ?? denseWeeks(record);
  for (const cohort of cohorts) addCohort(ahead, cohort, dense);
  return packed(ahead, range, dense);
}

/** One place for each week, the half-year ahead included, and age band. */
export function denseWeeks(record: Weeks): Float64Array {
  return new Float64Array((weeksOf(record) + weeksAhead) * ageBandCount);
}

function addCohort({ firstWeek, lastWeek }: Weeks, { inServiceWeek, changes }: Cohort, dense: Float64Array): void {
  let units = 0;
  changes.forEach(([week, change], index) => {
    units += change;
    if (units === 0) return;
    const until = Math.min(changes[index + 1]?.[0] ?? lastWeek + 1, lastWeek + 1);
    for (let at = Math.max(week, firstWeek); at < until; at++) {
      const place = (at - firstWeek) * ageBandCount + ageBandOfWeeks(at - inServiceWeek);
      dense[place] = (dense[place] ?? 0) + units;
    }
  });
}

function packed(record: Weeks, range: BlockRange, dense: Float64Array): ExposureWeeks {
  const weeks = weeksOf(record);
  const starts = new Uint32Array(weeks + 1);
  const entries = countHeld(dense.subarray(0, weeks * ageBandCount));
  const bands = new Uint8Array(entries);
  const unitWeeks = new Float64Array(entries);
  const before = new Float64Array((range.count + 1) * ageBandCount);
  let entry = 0;
  for (let week = 0; week < weeks; week++) {
    const block = blockOf(record.firstWeek + week) - range.first;
    const isCounted = block >= 0 && block < range.count;
    for (let band = 0; band < ageBandCount; band++) {
      const amount = dense[week * ageBandCount + band] ?? 0;
      if (amount === 0) continue;
      bands[entry] = band;
      unitWeeks[entry] = amount;
      entry += 1;
      if (!isCounted) continue;
      const place = (block + 1) * ageBandCount + band;
      before[place] = (before[place] ?? 0) + amount;
    }
    starts[week + 1] = entry;
  }
  const sums = cumulated(before);
  return { starts, bands, unitWeeks, sums, held: heldPlaces(range, sums) };
}

function heldPlaces({ count }: BlockRange, sums: BlockSums): HeldPlaces {
  const [places, unitWeeks, before]: [number[], number[], number[]] = [[], [], []];
  for (let block = 0; block < count; block++) {
    const span = baselineOf(block);
    if (span === undefined) continue;
    for (let band = 0; band < ageBandCount; band++) {
      const own = sumOf(sums, { from: block, until: block + 1 }, band);
      if (own === 0) continue;
      places.push(block * ageBandCount + band);
      unitWeeks.push(own);
      before.push(sumOf(sums, span, band));
    }
  }
  return {
    places: Uint32Array.from(places),
    unitWeeks: Float64Array.from(unitWeeks),
    before: Float64Array.from(before),
  };
}

function countHeld(dense: Float64Array): number {
  let count = 0;
  for (let place = 0; place < dense.length; place++) if (dense[place] !== 0) count += 1;
  return count;
}
