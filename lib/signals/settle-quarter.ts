import { type CellWeeks, type LearntOfCompany, type PassingCell, passCells } from "./cell-weeks";
import { ratioOf } from "./evidence-of-luck";
import { settle } from "./follow-cell";
import { leastYearlyExpected } from "./settings";
import type {
  CellGroup,
  CellHistory,
  CellLine,
  Settled,
  SettledCell,
  SettledCells,
  SettledQuarter,
} from "./settled-quarter";
import { cellKeyText, type SignalRecord } from "./signal-record";
import { ageBandCount, settledUntil, type WeekNumber, weeksPerBlock } from "./weeks";

/** Quarters that are followed by what is settled: that of the week and the one before. */
const quartersAhead = 2;
const ratesPerCell = quartersAhead * ageBandCount;

/**
 * Works out what is settled when the last week of a record is judged.
 * Checked: tests/signals/weekly-update.test.ts.
 */
export function settleQuarter(record: SignalRecord): Settled {
  const until = settledUntil(record.lastWeek);
  const before = recordBefore(record, until);
  const growing = growingCells(before);
  const learnt = passCells(before, leastYearlyExpected, (passing) => growing.add(passing), quartersAhead);
  const { cells, lines, groups, histories } = growing.done();
  return {
    quarter: { firstWeek: record.firstWeek, until, ...lastOf(learnt), lines, groups, cells },
    historyOf: (cell) => histories[cell]?.(),
  };
}

/** The record as it would be if it had ended before a week; jobs that came late are left out, as everywhere. */
function recordBefore(record: SignalRecord, until: WeekNumber): SignalRecord {
  return {
    ...record,
    lastWeek: until - 1,
    cohorts: record.cohorts
      .map((cohort) => ({ ...cohort, changes: cohort.changes.filter(([week]) => week < until) }))
      .filter(({ changes }) => changes.length > 0),
    jobs: record.jobs.filter(({ failedWeek }) => failedWeek < until),
  };
}

function lastOf({ spread, clumped, seasons }: LearntOfCompany): Pick<SettledQuarter, "spread" | "clumped" | "seasons"> {
  const last = <One>(list: readonly One[]) => list.slice(-quartersAhead);
  return {
    spread: spread.component.at(-1) ?? 0,
    clumped: {
      component: last(clumped.component),
      fault_code: last(clumped.fault_code),
      symptom: last(clumped.symptom),
    },
    seasons: new Map([...seasons].map(([type, list]) => [type, last(list)])),
  };
}

function growingCells(before: SignalRecord) {
  const [lines, groups] = [new Numbered<CellLine>(), new Numbered<CellGroup>()];
  const rows: SettledCell[] = [];
  const rates: number[] = [];
  const histories: (() => CellHistory)[] = [];
  const idsOf = (positions: readonly number[]) => positions.map((model) => before.models[model]?.modelId ?? -1);
  return {
    add: ({ cell, rates: all, models, alike, kept }: PassingCell) => {
      const { kind, word, productType, maker, model, madeHalf } = cell.key;
      const line = { kind, word, productType, maker: kind === "fault_code" ? maker : undefined };
      const group = { productType, maker, model, madeHalf, modelIds: idsOf(models) };
      const settled = settle(undefined, cell, before.lastWeek + 1, ratioOf(cell.key));
      const three = lastQuarters(cell, before.lastWeek + 1 - 3 * weeksPerBlock);
      const [toleratedFirst = 1, toleratedSecond = 1] = cell.tolerated.slice(-quartersAhead);
      rows.push({
        line: lines.place(lineText(line), line),
        group: groups.place(cellKeyText({ ...cell.key, kind: "component", word: "" }), group),
        ...{ toleratedFirst, toleratedSecond },
        ...settled,
        ...three,
      });
      for (const rate of all.subarray(-ratesPerCell)) rates.push(rate);
      histories.push(() => historyOf(kept(), settled.onsetWeek, alike(), idsOf));
    },
    done: () => ({ cells: columnsOf(rows, rates), lines: lines.all, groups: groups.all, histories }),
  };
}

function historyOf(
  cell: CellWeeks,
  onsetWeek: WeekNumber,
  alike: readonly number[] | undefined,
  idsOf: (positions: readonly number[]) => number[],
): CellHistory {
  const { observed, expected, firstWeek } = cell;
  const carried = cell.carrying(onsetWeek, firstWeek + observed.length - 1);
  return { observed, expected, ages: cell.ages(), carried, alikeIds: alike && idsOf(alike) };
}

function lastQuarters({ firstWeek, observed, expected }: CellWeeks, from: WeekNumber) {
  const sum = { threeObserved: 0, threeExpected: 0 };
  for (let place = Math.max(0, from - firstWeek); place < expected.length; place++) {
    sum.threeObserved += observed[place] ?? 0;
    sum.threeExpected += expected[place] ?? 0;
  }
  return sum;
}

function columnsOf(rows: readonly SettledCell[], rates: readonly number[]): SettledCells {
  const column = (name: keyof SettledCell) => Float32Array.from(rows, (row) => row[name]);
  return {
    line: column("line"),
    group: column("group"),
    toleratedFirst: column("toleratedFirst"),
    toleratedSecond: column("toleratedSecond"),
    score: column("score"),
    onsetWeek: column("onsetWeek"),
    observed: column("observed"),
    expected: column("expected"),
    yearMean: column("yearMean"),
    yearWeeks: column("yearWeeks"),
    threeObserved: column("threeObserved"),
    threeExpected: column("threeExpected"),
    rates: Float32Array.from(rates),
  };
}

function lineText({ kind, word, productType, maker }: CellLine): string {
  return [kind, word, productType, maker ?? ""].join("\u001f");
}

/** Things that are told apart by a name, each with its place. */
class Numbered<One> {
  readonly all: One[] = [];
  private readonly places = new Map<string, number>();

  place(name: string, one: One): number {
    const known = this.places.get(name);
    if (known !== undefined) return known;
    this.places.set(name, this.all.length);
    return this.all.push(one) - 1;
  }
}
