import { type BlockRange, blockRange, blockSums, sumOf, wholeOf } from "./block-sums";
import {
  addMeans,
  type CellParts,
  type CellRoom,
  cellRoom,
  coveredBy,
  type Followed,
  meanAhead,
  weeksByRates,
} from "./build-cell";
import { type AgeCounts, type CellWeeks, cohortsByModel } from "./cell-weeks";
import { seasonByWeek } from "./company-blocks";
import { denseWeeks, type ExposureWeeks, exposureWeeks } from "./exposure-weeks";
import type { Events } from "./line-events";
import type { CellGroup, CellLine, SettledCells, SettledQuarter } from "./settled-quarter";
import type { CellKey, SignalRecord } from "./signal-record";
import { type MachineWords, type TypeWords, typeWords, type WordEvents } from "./type-record";
import { ageBandCount, weeksAhead } from "./weeks";

/** The weeks of one cell that are not settled yet; they hold good until the next cell comes. */
export type PassingWeeks = Pick<
  CellWeeks,
  "key" | "firstWeek" | "expected" | "observed" | "tolerated" | "clumped" | "unknownAt"
>;

/** The same, to keep and to tell of. */
export interface WeeksSince extends Pick<CellWeeks, "key" | "firstWeek" | "expected" | "observed" | "carrying"> {
  readonly expectedAhead: number;
  /** @param alikeIds  models that it is compared with; undefined: all of its line */
  readonly ages: (alikeIds: readonly number[] | undefined) => AgeCounts[];
}

/** The weeks since a settled quarter, by the rates that were settled for them: of each cell, by its place. */
export interface CompanySince {
  readonly keyOf: (place: number) => CellKey;
  readonly passing: (place: number) => PassingWeeks;
  readonly kept: (place: number) => WeeksSince;
}

/** @param since  the record of those weeks, as known at the end of its last */
export function weeksSince(quarter: SettledQuarter, since: SignalRecord): CompanySince {
  const range = blockRange(since, 0);
  const { linesOf, groupsOf } = found(quarter, since, range);
  const { cells } = quarter;
  const at = (place: number) => {
    const [named, group] = [linesOf[cells.line[place] ?? -1], groupsOf[cells.group[place] ?? -1]];
    if (named === undefined || group === undefined) throw new RangeError(`no such cell: ${place}`);
    return { named, group, followed: { record: since, range, season: group.season } };
  };
  const shared = cellRoom(since, range);
  return {
    keyOf: (place) => {
      const { named, group } = at(place);
      return keyOf(named, group);
    },
    passing: (place) => {
      const { named, group, followed } = at(place);
      const { rates, expected, observed, tolerated } = filled(shared, cells, place);
      addMeans(expected, group.exposure, followed, rates);
      countJobs(observed.fill(0), named.line, group, followed, rates);
      const [firstWeek, clumped] = [since.firstWeek, quarter.clumped[named.kind]];
      return { key: keyOf(named, group), firstWeek, expected, observed, tolerated, clumped, unknownAt: allKnown };
    },
    kept: (place) => {
      const { named, group, followed } = at(place);
      const room = filled(cellRoom(since, range), cells, place);
      const parts = { exposure: group.exposure, events: () => eventsIn(named.line, group) };
      return {
        key: keyOf(named, group),
        firstWeek: since.firstWeek,
        ...weeksByRates(followed, parts, room),
        expectedAhead: meanAhead(group.withAhead(), followed, room.rates),
        ages: (alikeIds) => agesSince(range, named, parts, alikeIds && group.positionsOf(alikeIds)),
      };
    },
  };
}

/** The record since holds nothing that was not known by its end. */
const allKnown = () => 0;

function keyOf({ kind, word }: CellLine, { productType, maker, model, madeHalf }: CellGroup): CellKey {
  return { kind, word, productType, maker, model, madeHalf };
}

function filled(room: CellRoom, cells: SettledCells, place: number): CellRoom {
  const { rates, tolerated } = room;
  // Number by number: a hundred thousand pieces of one kind of array set into another cost more than all the rest.
  const from = place * rates.length;
  for (let entry = 0; entry < rates.length; entry++) rates[entry] = cells.rates[from + entry] ?? 0;
  tolerated[0] = cells.toleratedFirst[place] ?? 1;
  tolerated[1] = cells.toleratedSecond[place] ?? 1;
  return room;
}

interface NamedLine extends CellLine {
  /** All that could have it. */
  readonly machines: MachineWords | undefined;
  /** Undefined: nothing happened under it. */
  readonly line: WordEvents | undefined;
}

interface FoundGroup extends CellGroup, Pick<CellParts, "models" | "exposure">, Pick<Followed, "season"> {
  readonly positionsOf: (ids: readonly number[]) => number[];
  /** The half-year ahead included, which only the few cells that are told of are asked for. */
  readonly withAhead: () => ExposureWeeks;
}

/** Lines and groups of the quarter in the record since. */
function found({ lines, groups, seasons }: SettledQuarter, since: SignalRecord, range: BlockRange) {
  const cohortsOf = cohortsByModel(since);
  const dense = denseWeeks(since);
  const types = typeWords(since, (model) => {
    const own = cohortsOf.get(model);
    return own && exposureWeeks(since, range, own, dense, 0);
  });
  const place = new Map(since.models.map(({ modelId }, position) => [modelId, position]));
  const positionsOf = (ids: readonly number[]) => ids.flatMap((id) => place.get(id) ?? []);
  const seasonOf = new Map([...seasons].map(([type, waves]) => [type, seasonByWeek(since, waves, range)]));
  return {
    linesOf: lines.map((name): NamedLine => {
      const machines = machinesOf(types, name, since);
      return {
        ...name,
        machines,
        line: machines?.words.find(({ kind, word }) => kind === name.kind && word === name.word),
      };
    }),
    groupsOf: groups.map((group): FoundGroup => {
      const models = positionsOf(group.modelIds);
      const season = seasonOf.get(group.productType) ?? new Float64Array();
      const all = models.flatMap((model) => cohortsOf.get(model) ?? []);
      const own = group.madeHalf === undefined ? all : all.filter((cohort) => cohort.madeHalf === group.madeHalf);
      const exposure = (weeksAfter: number) => exposureWeeks(since, range, own, dense, weeksAfter);
      return { ...group, models, positionsOf, season, exposure: exposure(0), withAhead: () => exposure(weeksAhead) };
    }),
  };
}

function machinesOf(
  types: readonly TypeWords[],
  { productType, maker }: CellLine,
  { models }: SignalRecord,
): MachineWords | undefined {
  const type = types.find((one) => one.productType === productType);
  if (maker === undefined) return type;
  return type?.makers.find((own) => [...own.models.keys()].some((model) => models[model]?.maker === maker));
}

function eventsIn(line: WordEvents | undefined, { models, madeHalf }: FoundGroup): readonly Events[] {
  if (line === undefined) return [];
  return models.flatMap((model) => {
    const own = line.eventsOf.get(model);
    return (madeHalf === undefined ? own : own?.halves.get(madeHalf)) ?? [];
  });
}

/** Adds the jobs of a cell by week, at ages for which there is an expectation. */
function countJobs(
  observed: Float64Array,
  line: WordEvents | undefined,
  group: FoundGroup,
  followed: Followed,
  rates: Float64Array,
): void {
  const isCovered = coveredBy(followed, rates);
  for (const { columns, from, until } of eventsIn(line, group)) {
    for (let at = from; at < until; at++) {
      const week = columns.failedWeek[at] ?? 0;
      if (!isCovered(week, columns.inServiceWeek[at] ?? 0)) continue;
      const place = week - followed.record.firstWeek;
      observed[place] = (observed[place] ?? 0) + (columns.jobs[at] ?? 0);
    }
  }
}

function agesSince(
  range: BlockRange,
  { machines, line }: NamedLine,
  { exposure, events }: Pick<CellParts, "exposure" | "events">,
  alike: readonly number[] | undefined,
): AgeCounts[] {
  const all = wholeOf(range);
  const compared = alike ?? [...(machines?.models.keys() ?? [])];
  const sums = compared.flatMap((model) => machines?.models.get(model)?.sums ?? []);
  const jobs = blockSums(
    range,
    compared.flatMap((model) => line?.eventsOf.get(model) ?? []),
  );
  const ownJobs = blockSums(range, events());
  return Array.from({ length: ageBandCount }, (_, band) => {
    const [own, ownUnitWeeks] = [sumOf(ownJobs, all, band), sumOf(exposure.sums, all, band)];
    const unitWeeks = sums.reduce((sum, one) => sum + sumOf(one, all, band), 0);
    // The cell is one of all of its line, and none of those that are built like it.
    const [others, othersUnitWeeks] =
      alike === undefined
        ? [sumOf(jobs, all, band) - own, unitWeeks - ownUnitWeeks]
        : [sumOf(jobs, all, band), unitWeeks];
    return { band, own, ownUnitWeeks, others, othersUnitWeeks };
  });
}
