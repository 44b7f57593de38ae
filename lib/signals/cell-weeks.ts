import type { ProductType } from "@/lib/domain/product-type";
import { addedTogether, type BlockRange, type BlockSums, blockRange, blockSums } from "./block-sums";
import { alikeOf, buildCell, type CellParts, cellRoom } from "./build-cell";
import { clumpingByBlock } from "./clumping";
import { seasonByBlock, seasonByWeek, spreadByBlock } from "./company-blocks";
import { denseWeeks, type ExposureWeeks, exposureWeeks } from "./exposure-weeks";
import { largestYear } from "./largest-year";
import type { Events } from "./line-events";
import type { ModelSums } from "./rest-of-type";
import type { Season } from "./season";
import type { CellKey, Cohort, SignalRecord, WordKind } from "./signal-record";
import { type Line, type MachineGroup, type TypeRecord, typeRecords } from "./type-record";

/** Observed and expected counts of one cell, week by week. */
export interface CellWeeks {
  readonly key: CellKey;
  readonly firstWeek: number;
  /** 0 in weeks that have no expectation: before there is a baseline, or at ages that no other unit has reached. */
  readonly expected: Float64Array;
  /** Expected in the half-year after the last week, with the units now in service. */
  readonly expectedAhead: number;
  /** Jobs by the week of the call, at ages for which there is an expectation. */
  readonly observed: Float64Array;
  /** By block of 13 weeks from that of the first week: ratio of observed to expected up to which nothing is wrong. */
  readonly tolerated: Float64Array;
  /** By the same blocks: variance of a week's count over its mean while nothing is wrong, 1 or more. */
  readonly clumped: readonly number[];
  /** Own and others' failures and unit-weeks by age, over the whole record. */
  readonly ages: () => readonly AgeCounts[];
  /** How many of a week's jobs were not on record by the end of another. */
  readonly unknownAt: (week: number, seenAt: number) => number;
  /** Jobs of the weeks from..to by the component that was found at fault. */
  readonly carrying: (from: number, to: number) => ReadonlyMap<string, number>;
}

/** What is told of the few cells that lead a signal. */
export type ToldCell = Pick<
  CellWeeks,
  "key" | "firstWeek" | "expected" | "expectedAhead" | "observed" | "ages" | "carrying"
>;

export interface AgeCounts {
  readonly band: number;
  readonly own: number;
  readonly ownUnitWeeks: number;
  readonly others: number;
  readonly othersUnitWeeks: number;
}

/** Cells of a company that is too large for all of them to be held at once. */
export interface PassingCell {
  /** Holds good until the next cell comes, as do the rates: by block and age band, as they were learnt for it. */
  readonly cell: CellWeeks;
  readonly rates: Float64Array;
  /** By position in the record's models. */
  readonly models: readonly number[];
  /** Those that it is compared with, where not all of the kind are. */
  readonly alike: () => readonly number[] | undefined;
  /** The same, to keep. */
  readonly kept: () => CellWeeks;
}

/** Every cell of the company, all held at once: for companies of usual size. */
export function cellWeeks(record: SignalRecord, leastYearlyExpected: number): CellWeeks[] {
  const cells: CellWeeks[] = [];
  passCells(record, leastYearlyExpected, ({ kept }) => cells.push(kept()));
  return cells;
}

/**
 * Every cell of the company, one after the other: each component and each symptom by model, by maker (where it has
 * several models of the type), each component by half-year of production, and each fault code of a maker by model. Smaller
 * ones than asked for are left to the cell of their model or maker, which holds their counts. A week's expectation rests
 * on the years before its quarter only, so it is the same whenever it is computed.
 * @param leastYearlyExpected  a cell is followed if any year of it had at least this many expected failures
 * @param ahead  quarters after the record for which rates are learnt too; up to 2, with the machines in service at its end
 * Checked: tests/signals/cell-weeks.test.ts, by hand; tests/signals/by-definition.test.ts, by separate code that walks
 *   unit by unit.
 */
export function passCells(
  record: SignalRecord,
  leastYearlyExpected: number,
  visit: (passing: PassingCell) => void,
  ahead = 0,
): LearntOfCompany {
  const range = blockRange(record, ahead);
  const cohortsOf = cohortsByModel(record);
  const dense = denseWeeks(record);
  const types = typeRecords(record, range, (model) => {
    const own = cohortsOf.get(model);
    return own && exposureWeeks(record, range, own, dense);
  });
  const spread = spreadByBlock(types, range);
  const seasons = new Map(types.map((type) => [type.productType, seasonByBlock(record, type, range)]));
  const seasonOf = ({ productType }: TypeRecord) => seasonByWeek(record, seasons.get(productType) ?? [], range);
  const clumped = clumpingByBlock(record, types, range, seasonOf);
  const room = cellRoom(record, range);
  for (const type of types) {
    const season = seasonOf(type);
    const learnt: Learnt = { record, range, spread, clumped, season, least: leastYearlyExpected, dense };
    const pass: Pass = (line, candidate, partsWith) => {
      if (largestYear(line, candidate, undefined, range.count) < learnt.least) return; // most cells of a large company end here
      const { events } = candidate.sums();
      // Own failures, left out of what the others predict, can only lower it.
      if (events !== undefined && largestYear(line, candidate, events, range.count) < learnt.least) return;
      visit({
        cell: buildCell(learnt, line, partsWith({ exposure: candidate.exposure.sums, events }), room),
        rates: room.rates,
        models: candidate.models,
        alike: () => alikeOf(line, candidate.models, range),
        kept: () => buildCell(learnt, line, partsWith(undefined), cellRoom(record, range)),
      });
    };
    for (const group of groupsOf(type, cohortsOf, learnt)) passWhole(type, group, learnt, pass);
    for (const model of type.models.keys()) passHalves(type, model, cohortsOf.get(model) ?? [], learnt, pass);
    for (const maker of type.makers) for (const group of modelsOf(record, maker)) passWhole(maker, group, learnt, pass);
  }
  return { spread, clumped, seasons };
}

/** By block; how much models differ anyway is a share of the expectation. */
export interface LearntOfCompany {
  readonly spread: Readonly<Record<WordKind, readonly number[]>>;
  readonly clumped: Readonly<Record<WordKind, readonly number[]>>;
  readonly seasons: ReadonlyMap<ProductType, readonly Season[]>;
}

/** @param partsWith  all of the cell, with sums that are given or added up anew, when others came after it */
type Pass = (
  line: Line,
  candidate: Pick<CellParts, "models" | "exposure"> & { readonly sums: () => ModelSums },
  partsWith: (sums: ModelSums | undefined) => CellParts,
) => void;

/** What is learnt of the company and of the type, the same for all of the type's cells. */
export interface Learnt extends Omit<LearntOfCompany, "seasons"> {
  readonly record: SignalRecord;
  readonly range: BlockRange;
  /** By week of the record: how many times the year's mean is expected. */
  readonly season: Float64Array;
  readonly least: number;
  /** Room for exposures to be reckoned in. */
  readonly dense: Float64Array;
}

interface Group {
  readonly models: readonly number[];
  readonly maker: string;
  readonly model: string | undefined;
  readonly exposure: ExposureWeeks;
}

/** Each model, and each maker that has several of the type beside other makers. */
function groupsOf(
  type: TypeRecord,
  cohortsOf: ReadonlyMap<number, readonly Cohort[]>,
  { record, range, dense }: Learnt,
): Group[] {
  const groups = modelsOf(record, type);
  for (const maker of type.makers) {
    const own = [...maker.models.keys()];
    if (own.length < 2 || type.makers.length < 2) continue;
    const cohorts = own.flatMap((model) => cohortsOf.get(model) ?? []);
    const exposure = exposureWeeks(record, range, cohorts, dense);
    groups.push({ models: own, maker: record.models[own[0] ?? -1]?.maker ?? "", model: undefined, exposure });
  }
  return groups;
}

function modelsOf({ models }: SignalRecord, group: MachineGroup): Group[] {
  return [...group.models].map(([index, exposure]) => {
    const { maker, number } = models[index] ?? { maker: "", number: "" };
    return { models: [index], maker, model: number, exposure };
  });
}

function passWhole(type: MachineGroup, group: Group, { range }: Learnt, pass: Pass): void {
  const { models, exposure } = group;
  const reused = blockSums(range, []);
  for (const line of type.lines) {
    const sumsIn = (into?: BlockSums) => ({ exposure: exposure.sums, events: eventsOf(line, models, range, into) });
    pass(line, { models, exposure, sums: () => sumsIn(reused) }, (sums) => ({
      key: keyOf(type.productType, group, line.kind, line.word, undefined),
      models,
      exposure,
      sums: sums ?? sumsIn(),
      events: () => eventsOfModels(line, models),
    }));
  }
}

function eventsOfModels({ eventsOf: of }: Line, models: readonly number[]): readonly Events[] {
  return models.flatMap((model) => of.get(model) ?? []);
}

function eventsOf(line: Line, models: readonly number[], range: BlockRange, into?: BlockSums): BlockSums | undefined {
  const sums = models.flatMap((model) => line.sumsOf(model)?.events ?? []);
  return sums.length < 2 ? sums[0] : addedTogether(sums, range, into);
}

function passHalves(type: TypeRecord, model: number, cohorts: readonly Cohort[], learnt: Learnt, pass: Pass): void {
  const { record, range, dense } = learnt;
  const { maker, number } = record.models[model] ?? { maker: "", number: "" };
  const lines = type.lines
    .filter(({ kind }) => kind === "component")
    .map((line) => ({ line, halves: line.eventsOf.get(model)?.halves }));
  const models = [model];
  const reused = blockSums(range, []); // a large company has millions, and few are followed
  for (const half of new Set(cohorts.flatMap(({ madeHalf }) => madeHalf ?? []))) {
    const exposure = exposureWeeks(
      record,
      range,
      cohorts.filter(({ madeHalf }) => madeHalf === half),
      dense,
    );
    for (const { line, halves } of lines) {
      const own = halves?.get(half);
      const events = own === undefined ? [] : [own];
      const sumsIn = (into?: BlockSums) => ({
        exposure: exposure.sums,
        events: own === undefined ? undefined : blockSums(range, events, into),
      });
      pass(line, { models, exposure, sums: () => sumsIn(reused) }, (sums) => ({
        key: keyOf(type.productType, { maker, model: number }, line.kind, line.word, half),
        models,
        exposure,
        sums: sums ?? sumsIn(),
        events: () => events,
      }));
    }
  }
}

function keyOf(
  productType: ProductType,
  { maker, model }: Pick<Group, "maker" | "model">,
  kind: CellKey["kind"],
  word: string,
  madeHalf: number | undefined,
): CellKey {
  return { kind, word, productType, maker, model, madeHalf };
}

export function cohortsByModel({ cohorts }: SignalRecord): Map<number, Cohort[]> {
  const byModel = new Map<number, Cohort[]>();
  for (const cohort of cohorts) {
    const own = byModel.get(cohort.model) ?? [];
    byModel.set(cohort.model, own);
    own.push(cohort);
  }
  return byModel;
}
