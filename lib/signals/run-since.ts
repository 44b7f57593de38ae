import { cellFunnel, type FunnelCell } from "./cell-funnel";
import type { ToldCell } from "./cell-weeks";
import { type JudgedCell, ratioOf, type Story, storiesOf } from "./evidence-of-luck";
import { type CellStanding, standingAfter } from "./follow-cell";
import { luckInAYear } from "./luck";
import { listLevel } from "./settings";
import { type Settled, type SettledQuarter, settledSum } from "./settled-quarter";
import { type CellKey, type SignalRecord, storyKey } from "./signal-record";
import type { RunSignal, SignalRun } from "./signal-run";
import { toldCell } from "./told-cell";
import { weeksPerBlock } from "./weeks";
import { type CompanySince, type PassingWeeks, weeksSince } from "./weeks-since";
import { type FoundSignal, worthALook } from "./worth-a-look";

/**
 * What the weeks since a settled quarter make of it.
 * @param since  the record of those weeks
 * @throws NoHistory where a cell comes up whose settled weeks were not kept
 */
export function runSince(settled: Settled, since: SignalRecord): SignalRun {
  const { quarter } = settled;
  const company = weeksSince(quarter, since);
  const judged: JudgedCell[] = [];
  const lastYear: FunnelCell[] = [];
  for (let place = 0; place < quarter.cells.line.length; place++) {
    const cell = company.passing(place);
    if (isInFunnel(cell)) lastYear.push(funnelCell(quarter, place, cell, since));
    const standing = standingSince(quarter, place, cell, since);
    if (standing === undefined) continue;
    const chance = luckInAYear({ score: standing.score, mean: standing.weeklyMean, ratio: ratioOf(cell.key) });
    judged.push(new JudgedSince({ settled, company, since }, place, chance));
  }
  const stories = storiesOf(judged);
  const found = worthALook(stories, listLevel);
  return {
    kind: "followed",
    week: since.lastWeek,
    cells: judged.length,
    stories: stories.length,
    byLuck: listLevel * found.length,
    funnel: cellFunnel(
      lastYear.filter(({ expected }) => expected > 0),
      quarter.spread,
    ),
    signals: found.map(runSignal),
  };
}

function standingSince(
  quarter: SettledQuarter,
  place: number,
  cell: PassingWeeks,
  { lastWeek, knownWithin }: SignalRecord,
): CellStanding | undefined {
  return standingAfter(settledSum(quarter, place), cell, lastWeek, { knownWithin, ratio: ratioOf(cell.key) });
}

interface Judging {
  readonly settled: Settled;
  readonly company: CompanySince;
  readonly since: SignalRecord;
}

/** Of a hundred thousand cells only the chance is kept, and the rest worked out again where it is asked for: holding it costs more. */
class JudgedSince implements JudgedCell {
  constructor(
    private readonly judging: Judging,
    private readonly place: number,
    readonly chance: number,
  ) {}

  get key(): CellKey {
    return this.judging.company.keyOf(this.place);
  }

  get standing(): CellStanding {
    const { settled, company, since } = this.judging;
    const standing = standingSince(settled.quarter, this.place, company.passing(this.place), since);
    if (standing === undefined) throw new RangeError("a cell is judged only where it stands");
    return standing;
  }

  weeks(): ToldCell {
    const { settled, company } = this.judging;
    return toldCell(settled, this.place, company.kept(this.place));
  }
}

/** Components by model: what a funnel can compare. */
function isInFunnel({ key: { kind, model, madeHalf } }: PassingWeeks): boolean {
  return kind === "component" && model !== undefined && madeHalf === undefined;
}

/** The last four whole quarters, as far as their jobs can be on record. */
function funnelCell(
  { cells }: SettledQuarter,
  at: number,
  { key, firstWeek, observed, expected }: PassingWeeks,
  { lastWeek, knownWithin }: SignalRecord,
): FunnelCell {
  const sum = { key, observed: cells.threeObserved[at] ?? 0, expected: cells.threeExpected[at] ?? 0 };
  for (let place = 0; place < weeksPerBlock; place++) {
    sum.observed += observed[place] ?? 0;
    sum.expected += (expected[place] ?? 0) * (knownWithin[lastWeek - firstWeek - place] ?? 1);
  }
  return sum;
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
    within: standingOut(story, lead),
    symptoms: symptoms.flatMap(({ cells: [first] }) => first?.key.word ?? []),
  };
}

/** Cells that luck explains ten times less easily than the list allows, the leading one left out. Ten is our own choice, no source. */
function standingOut({ cells }: Story, lead: JudgedCell): RunSignal["within"] {
  return cells
    .filter((cell) => cell.chance <= listLevel / 10 && cell !== lead)
    .toSorted((a, b) => a.chance - b.chance)
    .map(({ key, standing }) => ({ key, observed: standing.observed, expected: standing.expected }));
}
