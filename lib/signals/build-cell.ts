import { type BlockRange, type Span, sumOf } from "./block-sums";
import type { AgeCounts, CellWeeks, Learnt } from "./cell-weeks";
import { type ExposureWeeks, weeksOf } from "./exposure-weeks";
import type { ModelSums } from "./rest-of-type";
import { expectedInBlock, type RestRates, restRates } from "./rest-rates";
import type { CellKey, SignalRecord } from "./signal-record";
import { toleratedRatio } from "./tolerated-ratio";
import { type Line, type LineEvent, sumsOfEvents } from "./type-record";
import { ageBandCount, blockOf, weeksAhead, weeksPerBlock } from "./weeks";

export interface CellParts {
  readonly key: CellKey;
  readonly models: readonly number[];
  readonly exposure: ExposureWeeks;
  /** Read while the cell is built, and then no more. */
  readonly sums: ModelSums;
  readonly events: readonly LineEvent[];
}

/** @returns undefined where no year of the cell has enough expected failures to be followed by itself */
export function buildCell(learnt: Learnt, line: Line, parts: CellParts): CellWeeks | undefined {
  const { record, range } = learnt;
  const { firstWeek } = record;
  if (largestYear(learnt, line, parts) < learnt.least) return undefined; // before all else: most cells of a large company end here
  const blocks = ratesByBlock(learnt, line, parts);
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
  return {
    key: parts.key,
    firstWeek,
    expected,
    expectedAhead,
    tolerated,
    ages: () => agesOf(range, line, parts),
    ...observedOf(record, coveredEvents(learnt, parts.events, blocks)),
  };
}

function ratesByBlock({ range }: Learnt, line: Line, parts: CellParts): (RestRates | undefined)[] {
  return Array.from({ length: range.count }, (_, block) => {
    const span = baselineWith(line, parts, block);
    return span && restRates(line.rest, parts.sums, block, span);
  });
}

/** Of the record's weeks, at ages at which there is an expectation. */
function coveredEvents(
  { record, range }: Learnt,
  events: readonly LineEvent[],
  blocks: readonly (RestRates | undefined)[],
): LineEvent[] {
  return events.filter(
    ({ week, band }) =>
      week >= record.firstWeek &&
      week <= record.lastWeek &&
      blocks[blockOf(week) - range.first]?.covered[band] === true,
  );
}

function agesOf(range: BlockRange, line: Line, parts: Pick<CellParts, "exposure" | "events">): AgeCounts[] {
  const all: Span = { from: 0, until: range.count };
  const ownEvents = sumsOfEvents(parts.events, range);
  const { events, exposure } = line.rest.whole();
  return Array.from({ length: ageBandCount }, (_, band) => {
    const [failures, unitWeeks] = [sumOf(ownEvents, all, band), sumOf(parts.exposure.sums, all, band)];
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
  rates: readonly number[],
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
function largestYear({ range }: Learnt, line: Line, parts: CellParts): number {
  const year = [0, 0, 0, 0];
  let largest = 0;
  for (let block = 0; block < range.count; block++) {
    const span = baselineWith(line, parts, block);
    year[block % 4] = span === undefined ? 0 : expectedInBlock(line.rest, parts.sums, block, span);
    largest = Math.max(largest, (year[0] ?? 0) + (year[1] ?? 0) + (year[2] ?? 0) + (year[3] ?? 0));
  }
  return largest;
}

/** Undefined before there is a baseline, and for models that seem not to have the component. */
function baselineWith({ rest }: Line, { models }: CellParts, block: number): Span | undefined {
  const span = rest.span(block);
  return span !== undefined && models.some((model) => rest.has(model, block)) ? span : undefined;
}

function observedOf(record: SignalRecord, counted: readonly LineEvent[]) {
  const observed = new Float64Array(weeksOf(record));
  const late = new Map<number, LineEvent[]>();
  for (const event of counted) {
    const place = event.week - record.firstWeek;
    observed[place] = (observed[place] ?? 0) + event.amount;
    if (event.knownWeek > event.week) late.set(event.week, [...(late.get(event.week) ?? []), event]);
  }
  return {
    observed,
    unknownAt: (week: number, seenAt: number) =>
      (late.get(week) ?? []).reduce((sum, { knownWeek, amount }) => sum + (knownWeek > seenAt ? amount : 0), 0),
    carrying: (component: string, from: number, to: number) =>
      counted.reduce(
        (sum, { failed, week, amount }) => sum + (failed === component && week >= from && week <= to ? amount : 0),
        0,
      ),
  };
}
