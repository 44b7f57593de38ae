import { type CellFunnel, cellFunnel, type FunnelCell } from "./cell-funnel";
import { type AgeCounts, type CellWeeks, passCells } from "./cell-weeks";
import { type JudgedCell, judgeCell, ratioOf, type Story, storiesOf } from "./evidence-of-luck";
import { followCell } from "./follow-cell";
import { leastYearlyExpected, listLevel } from "./settings";
import { type CellKey, type SignalRecord, storyKey, type WordKind } from "./signal-record";
import { type WeekNumber, weeksPerBlock, weeksPerYear } from "./weeks";
import { type FoundSignal, worthALook } from "./worth-a-look";

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
  const judged: JudgedCell[] = [];
  const [at, { knownWithin }] = [[record.lastWeek], record];
  const lastYear: FunnelCell[] = [];
  const spread = passCells(record, leastYearlyExpected, ({ cell, kept }) => {
    lastYear.push(...funnelCells(cell, record));
    const [standing] = followCell(cell, { at, knownWithin, ratio: ratioOf(cell.key) });
    if (standing !== undefined) judged.push(judgeCell({ key: cell.key, weeks: kept, standing }));
  });
  const stories = storiesOf(judged);
  const found = worthALook(stories, listLevel);
  return {
    kind: "followed",
    week: record.lastWeek,
    cells: judged.length,
    stories: stories.length,
    byLuck: listLevel * found.length,
    funnel: cellFunnel(lastYear, spread.component),
    signals: found.map(runSignal),
  };
}

/** Components by model over the last year whose jobs are complete: what a funnel can compare. */
function funnelCells({ key, firstWeek, observed, expected }: CellWeeks, record: SignalRecord): FunnelCell[] {
  if (key.kind !== "component" || key.model === undefined || key.madeHalf !== undefined) return [];
  const until = record.lastWeek - firstWeek - (record.knownWithin.length - 1) + 1;
  const sum = { key, observed: 0, expected: 0 };
  for (let week = Math.max(0, until - weeksPerYear); week < until; week++) {
    sum.observed += observed[week] ?? 0;
    sum.expected += expected[week] ?? 0;
  }
  return sum.expected > 0 ? [sum] : [];
}

function runSignal({ lead, story, symptoms }: FoundSignal): RunSignal {
  const { standing } = lead;
  const cell = lead.weeks();
  return {
    key: storyKey(cell.key),
    word: cell.key.word,
    wordKind: cell.key.kind,
    lead: {
      key: cell.key,
      onsetWeek: standing.onsetWeek,
      observed: standing.observed,
      expected: standing.expected,
      expectedAhead: cell.expectedAhead,
      firstWeek: cell.firstWeek,
      weeklyObserved: [...cell.observed],
      ages: cell.ages(),
      weeklyExpected: [...cell.expected].map((mean) => Math.round(mean * 1e4) / 1e4),
    },
    chance: story.chance,
    adjusted: story.adjusted,
    within: standingOut(story, lead.key),
    symptoms: symptoms.flatMap(({ cells: [first] }) => first?.key.word ?? []),
  };
}

/** Cells that luck explains ten times less easily than the list allows, the leading one left out. Ten is our own choice, no source. */
function standingOut({ cells }: Story, lead: CellKey): RunSignal["within"] {
  return cells
    .filter(({ key, chance }) => chance <= listLevel / 10 && key !== lead)
    .toSorted((a, b) => a.chance - b.chance)
    .map(({ key, standing }) => ({ key, observed: standing.observed, expected: standing.expected }));
}
