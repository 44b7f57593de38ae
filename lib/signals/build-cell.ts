import { type BlockRange, type BlockSums, blockSums, type Span, sumOf, wholeOf } from "./block-sums";
import { builtAlike } from "./causes-of-symptom";
import type { AgeCounts, CellWeeks, Learnt } from "./cell-weeks";
import { type ExposureWeeks, weeksOf } from "./exposure-weeks";
import { jobsOfCell } from "./jobs-of-cell";
import type { Events } from "./line-events";
import type { ModelSums } from "./rest-of-type";
import { againstLine, uncovered } from "./rest-rates";
import type { CellKey, SignalRecord } from "./signal-record";
import { toleratedRatio } from "./tolerated-ratio";
import type { Line } from "./type-record";
import { ageBandCount, ageBandOfWeeks, blockOf, weeksAhead, weeksPerBlock } from "./weeks";

export interface CellParts {
  readonly key: CellKey;
  readonly models: readonly number[];
  readonly exposure: ExposureWeeks;
  /** Read while the cell is built, and then no more. */
  readonly sums: ModelSums;
  readonly events: () => readonly Events[];
}

/** Where a cell is worked out. A large company has a hundred thousand cells, which can share the room if each is read at once. */
export interface CellRoom {
  readonly expected: Float64Array;
  readonly observed: Float64Array;
  readonly lastKnown: Int32Array;
  readonly tolerated: Float64Array;
  /** By block and age band: events per unit-week of the others, or `uncovered`. */
  readonly rates: Float64Array;
}

export function cellRoom(record: Pick<SignalRecord, "firstWeek" | "lastWeek">, range: BlockRange): CellRoom {
  return {
    expected: new Float64Array(weeksOf(record)),
    observed: new Float64Array(weeksOf(record)),
    lastKnown: new Int32Array(weeksOf(record)),
    tolerated: new Float64Array(range.count),
    rates: new Float64Array(range.count * ageBandCount),
  };
}

/** @param room  the cell is made of it: it holds good until the room is given away again */
export function buildCell(learnt: Learnt, line: Line, parts: CellParts, room: CellRoom): CellWeeks {
  const { record, range } = learnt;
  fillRates(learnt, line, parts, room);
  return {
    key: parts.key,
    firstWeek: record.firstWeek,
    ...weeksByRates(learnt, parts, room),
    expectedAhead: meanAhead(parts.exposure, learnt, room.rates),
    tolerated: room.tolerated,
    clumped: learnt.clumped[line.kind],
    ages: () => agesOf(range, line, parts),
  };
}

/** The weeks of a record, and the rates by which they are followed. */
export type Followed = Pick<Learnt, "record" | "range" | "season">;

/** What each week brought and was expected to bring, by the rates that are in the room. */
export function weeksByRates(
  followed: Followed,
  { exposure, events }: Pick<CellParts, "exposure" | "events">,
  { expected, observed, lastKnown, rates }: CellRoom,
): Pick<CellWeeks, "expected" | "observed" | "unknownAt" | "carrying"> {
  addMeans(expected, exposure, followed, rates);
  const jobs = { events: events(), isCovered: coveredBy(followed, rates) };
  const room = { observed: observed.fill(0), lastKnown: lastKnown.fill(0) };
  return { expected, observed, ...jobsOfCell(followed.record.firstWeek, jobs, room) };
}

function fillRates({ range, spread }: Learnt, line: Line, parts: CellParts, { tolerated, rates }: CellRoom): void {
  for (let block = 0; block < range.count; block++) {
    const span = baselineWith(line, parts, block);
    if (span === undefined) {
      rates.fill(uncovered, block * ageBandCount, (block + 1) * ageBandCount);
      tolerated[block] = 1;
      continue;
    }
    const own = againstLine(line, parts, block, span, { rates, at: block * ageBandCount });
    tolerated[block] = toleratedRatio(own, spread[line.kind][block] ?? 0);
  }
}

/** Of the record's weeks, at ages at which there is an expectation. */
export function coveredBy(
  { record, range }: Followed,
  rates: Float64Array,
): (week: number, inServiceWeek: number) => boolean {
  return (week, inServiceWeek) =>
    week >= record.firstWeek &&
    week <= record.lastWeek &&
    (rates[(blockOf(week) - range.first) * ageBandCount + ageBandOfWeeks(week - inServiceWeek)] ?? uncovered) >= 0;
}

function agesOf(range: BlockRange, line: Line, parts: Pick<CellParts, "models" | "exposure" | "events">): AgeCounts[] {
  const all = wholeOf(range);
  const own = { events: blockSums(range, parts.events()), exposure: parts.exposure.sums };
  const others = othersOf(range, line, parts.models, own);
  return Array.from({ length: ageBandCount }, (_, band) => ({
    band,
    own: sumOf(own.events, all, band),
    ownUnitWeeks: sumOf(own.exposure, all, band),
    others: others.events(band),
    othersUnitWeeks: others.exposure(band),
  }));
}

/** Where models of the type are built differently: those that are built like these. */
export function alikeOf({ causes }: Line, models: readonly number[], range: BlockRange): readonly number[] | undefined {
  return causes && builtAlike(causes, models, range.count - 1);
}

/** All models of the type but the cell; where they are built differently, those that are built like it. */
function othersOf(
  range: BlockRange,
  line: Line,
  models: readonly number[],
  own: { readonly events: BlockSums; readonly exposure: BlockSums },
) {
  const all = wholeOf(range);
  const built = alikeOf(line, models, range);
  if (built === undefined) {
    const { events, exposure } = line.rest.whole();
    return {
      events: (band: number) => (events[band] ?? 0) - sumOf(own.events, all, band),
      exposure: (band: number) => (exposure[band] ?? 0) - sumOf(own.exposure, all, band),
    };
  }
  const alike = built.flatMap((model) => line.sumsOf(model) ?? []);
  const added = (pick: (sums: ModelSums) => BlockSums | undefined) => (band: number) =>
    alike.reduce((sum, one) => sum + sumIn(pick(one), all, band), 0);
  return { events: added(({ events }) => events), exposure: added(({ exposure }) => exposure) };
}

function sumIn(sums: BlockSums | undefined, span: Span, band: number): number {
  return sums === undefined ? 0 : sumOf(sums, span, band);
}

/** What each week of the record is expected to bring. */
export function addMeans(
  means: Float64Array,
  exposure: ExposureWeeks,
  { record, range, season }: Followed,
  rates: Float64Array,
): void {
  for (let block = 0; block < range.count; block++) {
    const from = Math.max(0, (range.first + block) * weeksPerBlock - record.firstWeek);
    const until = Math.min(means.length, (range.first + block + 1) * weeksPerBlock - record.firstWeek);
    for (let week = from; week < until; week++)
      means[week] = meanOfWeek(exposure, week, rates, block * ageBandCount) * (season[week] ?? 1);
  }
}

/** Of the half-year after the record, by the rates of its last block. */
export function meanAhead(exposure: ExposureWeeks, { record, range, season }: Followed, rates: Float64Array): number {
  const after = weeksOf(record);
  let sum = 0;
  for (let week = after; week < after + weeksAhead; week++)
    sum += meanOfWeek(exposure, week, rates, (range.count - 1) * ageBandCount) * (season[week] ?? 1);
  return sum;
}

function meanOfWeek(
  { starts, bands, unitWeeks }: ExposureWeeks,
  week: number,
  rates: Float64Array,
  at: number,
): number {
  let mean = 0;
  const end = starts[week + 1] ?? 0;
  for (let entry = starts[week] ?? 0; entry < end; entry++) {
    const rate = rates[at + (bands[entry] ?? 0)] ?? 0;
    if (rate > 0) mean += (unitWeeks[entry] ?? 0) * rate;
  }
  return mean;
}

/** Undefined before there is a baseline, and for models that seem not to have the component. */
export function baselineWith({ rest }: Line, { models }: Pick<CellParts, "models">, block: number): Span | undefined {
  const span = rest.spans[block];
  if (rest.allHave) return span;
  return span !== undefined && models.some((model) => rest.has(model, block)) ? span : undefined;
}
