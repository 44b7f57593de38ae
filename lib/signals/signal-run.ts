import type { CellFunnel } from "./cell-funnel";
import type { AgeCounts } from "./cell-weeks";
import { type KeptQuarter, keptQuarter } from "./kept-quarter";
import { recordSince } from "./record-since";
import { runSince } from "./run-since";
import { settleQuarter } from "./settle-quarter";
import type { CellKey, SignalRecord, WordKind } from "./signal-record";
import { NoHistory } from "./told-cell";
import { type WeekNumber, weeksPerBlock, weeksPerYear } from "./weeks";

/** What a company's record says at the end of one week. */
export type SignalRun =
  | {
      readonly kind: "followed";
      readonly week: WeekNumber;
      readonly cells: number;
      readonly stories: number;
      /** Lines of the list that luck alone would give: at most this many. */
      readonly byLuck: number;
      readonly funnel: CellFunnel;
      readonly signals: readonly RunSignal[];
    }
  /** Less than a year and a half of records: nothing can be expected yet. */
  | { readonly kind: "too-short"; readonly weeks: number; readonly needed: number }
  | { readonly kind: "no-units" };

export interface RunSignal {
  /** The same from week to week: word, kind of machine and maker. */
  readonly key: string;
  readonly word: string;
  readonly wordKind: WordKind;
  readonly lead: LeadCell;
  readonly chance: number;
  readonly adjusted: number;
  /** Other cells of the story that stand out. */
  readonly within: readonly { readonly key: CellKey; readonly observed: number; readonly expected: number }[];
  /** Symptoms and fault codes in which the same failures show. */
  readonly symptoms: readonly string[];
}

export interface LeadCell {
  readonly key: CellKey;
  readonly onsetWeek: WeekNumber;
  readonly observed: number;
  readonly expected: number;
  readonly expectedAhead: number;
  readonly firstWeek: WeekNumber;
  readonly weeklyObserved: readonly number[];
  readonly weeklyExpected: readonly number[];
  readonly ages: readonly AgeCounts[];
}

/** A baseline of a year, a quarter between, and the quarter that is judged by it. */
export const weeksNeeded = weeksPerYear + 2 * weeksPerBlock;

/** @param record  as known at the end of its last week */
export function signalRun(record: SignalRecord): SignalRun {
  const weeks = record.lastWeek - record.firstWeek + 1;
  if (record.cohorts.length === 0) return { kind: "no-units" };
  if (weeks < weeksNeeded) return { kind: "too-short", weeks, needed: weeksNeeded };
  return settledRun(record).run;
}

/**
 * The run of a record that is long enough, with what is to be kept of it: by that the other weeks of its quarter are judged
 * without working all out again.
 */
export function settledRun(record: SignalRecord): { readonly run: SignalRun; readonly kept: () => KeptQuarter } {
  const { quarter, historyOf } = settleQuarter(record);
  const wanted = new Set<number>();
  const noted = (place: number) => {
    wanted.add(place);
    return historyOf(place);
  };
  const run = runSince({ quarter, historyOf: noted }, recordSince(record, quarter.until));
  return { run, kept: () => keptQuarter({ quarter, historyOf }, wanted) };
}

/** The run of a later week of the quarter; undefined where a cell comes up whose history was not kept: then all is to be worked out. */
export function weeklyRun({ quarter, histories }: KeptQuarter, since: SignalRecord): SignalRun | undefined {
  try {
    return runSince({ quarter, historyOf: (place) => histories.get(place) }, since);
  } catch (error) {
    if (error instanceof NoHistory) return undefined;
    throw error;
  }
}
