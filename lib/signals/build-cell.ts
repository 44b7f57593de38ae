import { type BlockRange, type BlockSums, type Span, sumOf } from "./block-sums";
import type { AgeCounts, CellWeeks, Learnt } from "./cell-weeks";
import { type ExposureWeeks, weeksOf } from "./exposure-weeks";
import type { ModelSums } from "./rest-of-type";
import { type RestRates, restRates } from "./rest-rates";
import type { CellKey, SignalRecord } from "./signal-record";
import { toleratedRatio } from "./tolerated-ratio";
import type { Line, LineEvent } from "./type-record";
import { ageBandCount, blockOf, weeksAhead, weeksPerBlock } from "./weeks";

export interface CellParts {
  readonly key: CellKey;
  readonly models: readonly number[];
  readonly exposure: ExposureWeeks;
  readonly sums: ModelSums;
  readonly events: readonly LineEvent[];
}

/** @returns undefined where no year of the cell has enough expected failures to be followed by itself */
export function buildCell(learnt: Learnt, line: Line, parts: CellParts): CellWeeks | undefined {
  const { record, range } = learnt;
  const { firstWeek } = record;
  const blocks = ratesByBlock(learnt, line, parts);
  if (largestYear(blocks, parts.exposure.sums) < learnt.least) return undefined;
  const expected = new Float64Array(weeksOf(record));
  const tolerated = new Float64Array(range.count).fill(1);
  blocks.forEach((rest, block) => {
    if (rest === undefined) return;
    tolerated[block] = toleratedRatio(rest, learnt.spread[line.kind][block] ?? 0);
    const from = Math.max(0, (range.first + block) * weeksPerBlock - firstWeek);
    const until = Math.min(expected.length, (range.first + block + 1) * weeksPerBlock - firstWeek);
    addMeans(expected, parts.exposure, rest.rates, { from, until, season: learnt.season, after: 0 });
  });
  const ahead = new Float64Array(weeksAhead);
  const last = blocks.at(-1);
  if (last !== undefined)
    addMeans(ahead, parts.exposure, last.rates, {
      from: 0,
      until: weeksAhead,
      season: learnt.season,
      after: expected.length,
    });
  const expectedAhead = ahead.reduce((sum, mean) => sum + mean, 0);
  const isCovered = (week: number, band: number) => blocks[blockOf(week) - range.first]?.covered[band] === 1;
  return {
    key: parts.key,
    firstWeek,
    expected,
    expectedAhead,
    tolerated,
    ages: () => agesOf(learnt.range, line, parts.sums),
    ...observedOf(record, parts.events, isCovered),
  };
}

function ratesByBlock({ range }: Learnt, line: Line, parts: CellParts): (RestRates | undefined)[] {
  return Array.from({ length: range.count }, (_, block) => {
    const span = line.rest.span(block);
    if (span === undefined || !parts.models.some((model) => line.rest.has(model, block))) return undefined;
    return restRates(line.rest, parts.sums, block, span);
  });
}

function agesOf({ count }: BlockRange, line: Line, own: ModelSums): AgeCounts[] {
  const all: Span = { from: 0, until: count };
  const { events, exposure } = line.rest.whole();
  return Array.from({ length: ageBandCount }, (_, band) => {
    const [failures, unitWeeks] = [
      own.events === undefined ? 0 : sumOf(own.events, all, band),
      sumOf(own.exposure, all, band),
    ];
    return {
      band,
      own: failures,
      ownUnitWeeks: unitWeeks,
      others: (events[band] ?? 0) - failures,
      othersUnitWeeks: (exposure[band] ?? 0) - unitWeeks,
    };
  });
}

interface Stretch {
  readonly from: number;
  readonly until: number;
  readonly season: Float64Array;
  /** Weeks of the exposure that come before the first of the means. */
  readonly after: number;
}

function addMeans(
  means: Float64Array,
  { starts, bands, unitWeeks }: ExposureWeeks,
  rates: Float64Array,
  { from, until, season, after }: Stretch,
): void {
  for (let week = from; week < until; week++) {
    let mean = 0;
    const end = starts[after + week + 1] ?? 0;
    for (let at = starts[after + week] ?? 0; at < end; at++)
      mean += (unitWeeks[at] ?? 0) * (rates[bands[at] ?? 0] ?? 0);
    means[week] = mean * (season[after + week] ?? 1);
  }
}

/** Largest expectation over a year of blocks in a row, without the season, which evens out over a year. */
function largestYear(blocks: readonly (RestRates | undefined)[], sums: BlockSums): number {
  const means = blocks.map((rest, block) => {
    let mean = 0;
    if (rest === undefined) return mean;
    for (let band = 0; band < rest.rates.length; band++) {
      const rate = rest.rates[band] ?? 0;
      if (rate > 0) mean += rate * sumOf(sums, { from: block, until: block + 1 }, band);
    }
    return mean;
  });
  return Math.max(
    0,
    ...means.map(
      (_, block) => (means[block - 3] ?? 0) + (means[block - 2] ?? 0) + (means[block - 1] ?? 0) + (means[block] ?? 0),
    ),
  );
}

function observedOf(
  record: SignalRecord,
  events: readonly LineEvent[],
  isCovered: (week: number, band: number) => boolean,
) {
  const observed = new Float64Array(weeksOf(record));
  const counted = events.filter(
    ({ week, band }) => week >= record.firstWeek && week <= record.lastWeek && isCovered(week, band),
  );
  const late = new Map<number, LineEvent[]>();
  for (const event of counted) {
    const place = event.week - record.firstWeek;
    observed[place] = (observed[place] ?? 0) + event.jobs;
    if (event.knownWeek > event.week) late.set(event.week, [...(late.get(event.week) ?? []), event]);
  }
  return {
    observed,
    unknownAt: (week: number, seenAt: number) =>
      (late.get(week) ?? []).reduce((sum, { knownWeek, jobs }) => sum + (knownWeek > seenAt ? jobs : 0), 0),
    carrying: (component: string, from: number, to: number) =>
      counted.reduce(
        (sum, { failed, week, jobs }) => sum + (failed === component && week >= from && week <= to ? jobs : 0),
        0,
      ),
  };
}
