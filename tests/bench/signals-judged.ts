// One invented company, judged at the end of every week as it would have been then.
import type { CellWeeks } from "@/lib/signals/cell-weeks";
import { cellWeeks } from "@/lib/signals/cell-weeks";
import { judgeCell, ratioOf, storiesOf } from "@/lib/signals/evidence-of-luck";
import { followCell } from "@/lib/signals/follow-cell";
import { leastYearlyExpected, listLevel } from "@/lib/signals/settings";
import { type CellKey, cellKeyText, type SignalRecord } from "@/lib/signals/signal-record";
import { worthALook } from "@/lib/signals/worth-a-look";
import { makers, modelNumber, models } from "@/synthetic-data/models";
import { scenarioOf } from "@/synthetic-data/scenario";
import { drawCompany } from "./signals-company";
import { beyondThreeSigma, highestRates, monthWeeks, type PlainCell, plainCells } from "./signals-plain";
import { decoyTarget, expectedExtra, isTrue, type Target, targets, tellsOf } from "./signals-targets";

export interface Judged {
  /** By trouble: weeks from onset to the first signal (0 or less: on the list when it began); undefined if it never came. */
  readonly found: ReadonlyMap<string, Delay>;
  readonly falseSignals: number;
  readonly falseNames: readonly string[];
  readonly decoyWeeks: number;
}

export interface Delay {
  readonly weeks: number | undefined;
  /** Weeks of the record left after the onset: a later find could not be seen. */
  readonly watched: number;
}

export interface JudgedCompany {
  readonly years: number;
  readonly signals: Judged;
  /** The same as though no week's jobs came in clumps, where it was asked for. */
  readonly unclumped: Judged | undefined;
  readonly ranking: Judged;
  readonly threeSigma: Judged;
  /** Expected extra failures of each trouble in the half-year from its onset. */
  readonly extraInHalfYear: ReadonlyMap<string, number>;
}

/** A word of a maker that was off the list this long is a new signal when it comes back. */
const newAfterWeeks = 26;

export function judgeCompany(
  seed: number,
  asked: { readonly unclumped: boolean } = { unclumped: false },
): JudgedCompany {
  const { record, units } = drawCompany(scenarioOf({ seed, size: 1, until: "2026-10-31" }));
  const cells = cellWeeks(record, leastYearlyExpected);
  const first = firstFollowed(cells);
  const weeks = Array.from({ length: record.lastWeek - first + 1 }, (_, i) => first + i);
  const extra = expectedExtra(units, record);
  const onsets = new Map(targets.map(({ key }) => [key, onsetOf(extra.get(key), record.firstWeek, first)]));
  const judgedBy = (own: readonly CellWeeks[]) => tallyOf(own, record, weeks, tally(onsets, record.lastWeek));
  const plain = plainCells(record);
  const [ranking, threeSigma] = [tally(onsets, record.lastWeek), tally(onsets, record.lastWeek)];
  for (let week = first; week <= record.lastWeek; week += monthWeeks) {
    ranking.add(week, highestRates(plain, week - record.firstWeek).map(keyOfPlain));
    threeSigma.add(week, beyondThreeSigma(plain, week - record.firstWeek).map(keyOfPlain));
  }
  return {
    years: weeks.length / 52,
    signals: judgedBy(cells),
    unclumped: asked.unclumped ? judgedBy(cells.map((cell) => ({ ...cell, clumped: [] }))) : undefined,
    ranking: ranking.done(),
    threeSigma: threeSigma.done(),
    extraInHalfYear: new Map(
      targets.map(({ key }) => [key, extraAfter(extra.get(key), (onsets.get(key) ?? 0) - record.firstWeek)]),
    ),
  };
}

/** The list at the end of every week. */
function tallyOf(
  cells: readonly CellWeeks[],
  { knownWithin }: SignalRecord,
  weeks: readonly number[],
  signals: ReturnType<typeof tally>,
): Judged {
  const followed = cells.map((cell) => followCell(cell, { at: weeks, knownWithin, ratio: ratioOf(cell.key) }));
  weeks.forEach((week, i) => {
    const judged = cells.flatMap((cell, c) => {
      const standing = followed[c]?.[i];
      return standing === undefined ? [] : [judgeCell({ key: cell.key, weeks: () => cell, standing })];
    });
    signals.add(
      week,
      worthALook(storiesOf(judged), listLevel).map(({ lead }) => lead.key),
    );
  });
  return signals.done();
}

function firstFollowed(cells: readonly CellWeeks[]): number {
  return Math.min(...cells.map(({ firstWeek, expected }) => firstWeek + expected.findIndex((mean) => mean > 0)));
}

/** Week in which a trouble is expected to have brought its first extra failure, or the first week that is followed. */
function onsetOf(extra: Float64Array | undefined, firstWeek: number, firstFollowedWeek: number): number | undefined {
  let sum = 0;
  const place = (extra ?? new Float64Array()).findIndex((mean) => {
    sum += mean;
    return sum >= 1;
  });
  return place < 0 ? undefined : Math.max(firstWeek + place, firstFollowedWeek);
}

function extraAfter(extra: Float64Array | undefined, place: number): number {
  return (extra ?? new Float64Array())
    .slice(Math.max(0, place), Math.max(0, place) + 26)
    .reduce((sum, mean) => sum + mean, 0);
}

function keyOfPlain({ model, kind, word }: PlainCell): CellKey {
  const own = models[model];
  if (own === undefined) throw new RangeError(`model: no such place: ${model}`);
  return {
    kind,
    word,
    productType: own.productType,
    maker: makers[own.maker].name,
    model: modelNumber(own),
    madeHalf: undefined,
  };
}

/** Keeps what came up when: per trouble the first week, and how often something else came up anew. */
function tally(onsets: ReadonlyMap<string, number | undefined>, lastWeek: number) {
  const foundIn = new Map<string, number>();
  const lastSeen = new Map<string, number>();
  const names: string[] = [];
  let decoyWeeks = 0;
  return {
    add: (week: number, keys: readonly CellKey[]) => {
      for (const target of targets)
        if (!foundIn.has(target.key) && isFound(target, keys)) foundIn.set(target.key, week);
      if (keys.some((key) => tellsOf(decoyTarget, key))) decoyWeeks += 1;
      for (const key of keys.filter((one) => !isTrue(one))) {
        const name = cellKeyText({ ...key, madeHalf: undefined }).replaceAll("\u001f", " ");
        const before = lastSeen.get(name);
        if (before === undefined || week - before > newAfterWeeks) names.push(name);
        lastSeen.set(name, week);
      }
    },
    done: (): Judged => ({
      found: new Map(
        targets.map(({ key }) => {
          const onset = onsets.get(key);
          const week = foundIn.get(key);
          if (onset === undefined) return [key, { weeks: undefined, watched: 0 }];
          return [
            key,
            { weeks: week === undefined ? undefined : Math.max(0, week - onset), watched: lastWeek - onset },
          ];
        }),
      ),
      falseSignals: names.length,
      falseNames: names,
      decoyWeeks,
    }),
  };
}

function isFound(target: Target, keys: readonly CellKey[]): boolean {
  return keys.some((key) => tellsOf(target, key));
}
