import { type BlockRange, type BlockSums, blockSums } from "./block-sums";
import type { Cohort, SignalRecord } from "./signal-record";
import { ageBandCount, ageBandOfWeeks, weeksAhead } from "./weeks";

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
}

type Weeks = Pick<SignalRecord, "firstWeek" | "lastWeek">;

export function weeksOf({ firstWeek, lastWeek }: Weeks): number {
  return Math.max(0, lastWeek - firstWeek + 1);
}

/**
 * A unit counts for the whole of each week in which it begins under observation, at its age in whole weeks.
 * @param cohorts  of the group
 */
export function exposureWeeks(record: Weeks, range: BlockRange, cohorts: readonly Cohort[]): ExposureWeeks {
  const ahead = { ...record, lastWeek: record.lastWeek + weeksAhead };
  const dense = new Float64Array(weeksOf(ahead) * ageBandCount);
  for (const cohort of cohorts) addCohort(ahead, cohort, dense);
  return packed(ahead, range, dense);
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
  const bands: number[] = [];
  const unitWeeks: number[] = [];
  const additions: { week: number; band: number; amount: number }[] = [];
  for (let week = 0; week < weeks; week++) {
    for (let band = 0; band < ageBandCount; band++) {
      const amount = dense[week * ageBandCount + band] ?? 0;
      if (amount === 0) continue;
      bands.push(band);
      unitWeeks.push(amount);
      additions.push({ week: record.firstWeek + week, band, amount });
    }
    starts[week + 1] = bands.length;
  }
  return {
    starts,
    bands: Uint8Array.from(bands),
    unitWeeks: Float64Array.from(unitWeeks),
    sums: blockSums(range, additions),
  };
}
