import type { ProductType } from "@/lib/domain/product-type";
import type { AgeCounts } from "./cell-weeks";
import type { SettledSum } from "./follow-cell";
import type { Season } from "./season";
import type { CellKey, WordKind } from "./signal-record";
import type { WeekNumber } from "./weeks";

/**
 * Where every cell of a company stood at the end of a quarter, and the rates by which it is followed in the two quarters
 * after it. All of it rests on weeks that do not change any more, so a week is judged by what came since.
 */
export interface SettledQuarter {
  /** Of the record that it was worked out from. */
  readonly firstWeek: WeekNumber;
  /** First week that is not settled: the first of two quarters. */
  readonly until: WeekNumber;
  /** How much models differ anyway, of components. */
  readonly spread: number;
  /** By quarter, of the two. */
  readonly clumped: Readonly<Record<WordKind, readonly number[]>>;
  readonly seasons: ReadonlyMap<ProductType, readonly Season[]>;
  readonly lines: readonly CellLine[];
  readonly groups: readonly CellGroup[];
  readonly cells: SettledCells;
}

/** What a cell counts; a fault code is one maker's. */
export interface CellLine {
  readonly kind: WordKind;
  readonly word: string;
  readonly productType: ProductType;
  readonly maker: string | undefined;
}

/** Machines that a cell looks at. */
export interface CellGroup extends Pick<CellKey, "productType" | "maker" | "model" | "madeHalf"> {
  readonly modelIds: readonly number[];
}

/** Column by column, one entry a cell: a large company has a hundred thousand. Seven digits of each are enough, and half the room. */
export interface SettledCells extends Readonly<Record<keyof SettledCell, Float32Array>> {
  /** By cell, quarter and age band. */
  readonly rates: Float32Array;
}

export interface SettledCell extends SettledSum {
  /** Places in `lines` and `groups`. */
  readonly line: number;
  readonly group: number;
  readonly toleratedFirst: number;
  readonly toleratedSecond: number;
  /** Over the last three quarters. */
  readonly threeObserved: number;
  readonly threeExpected: number;
}

/** The settled weeks of a cell that may be told of. */
export interface CellHistory {
  readonly observed: Float64Array;
  readonly expected: Float64Array;
  readonly ages: readonly AgeCounts[];
  /** Models that it is compared with; undefined: all of its line. */
  readonly alikeIds: readonly number[] | undefined;
  /** Jobs since the onset by the component that was found at fault. */
  readonly carried: ReadonlyMap<string, number>;
}

/** What the weeks after it are followed by: the quarter, and the history of any cell, or of those that were kept. */
export interface Settled {
  readonly quarter: SettledQuarter;
  /** @param cell  by its place */
  readonly historyOf: (cell: number) => CellHistory | undefined;
}

export function settledSum({ cells }: SettledQuarter, place: number): SettledSum {
  return {
    score: cells.score[place] ?? 0,
    onsetWeek: cells.onsetWeek[place] ?? 0,
    observed: cells.observed[place] ?? 0,
    expected: cells.expected[place] ?? 0,
    yearMean: cells.yearMean[place] ?? 0,
    yearWeeks: cells.yearWeeks[place] ?? 0,
  };
}
