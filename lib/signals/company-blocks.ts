import { fewestExpected, type GroupCount, spreadBetweenGroups } from "./between-groups";
import type { BlockRange, Span } from "./block-sums";
import { baselineOf } from "./block-sums";
import { weeksOf } from "./exposure-weeks";
import { againstLine } from "./rest-rates";
import { noSeason, type Season, seasonFactor, seasonOf } from "./season";
import type { SignalRecord, WordKind } from "./signal-record";
import type { MachineGroup, TypeRecord } from "./type-record";
import { blockOf, weeksAhead, weeksPerBlock } from "./weeks";

/** How much models differ anyway, as a share of the expectation, at each block; each kind of word by itself. */
export function spreadByBlock(
  types: readonly TypeRecord[],
  range: BlockRange,
): Readonly<Record<WordKind, readonly number[]>> {
  const of = (groups: readonly MachineGroup[], kind: WordKind) =>
    countsByBlock(groups, kind, range).map(spreadBetweenGroups);
  const makers = types.flatMap((type) => type.makers);
  return {
    component: of(types, "component"),
    fault_code: of(makers, "fault_code"),
    symptom: of(types, "symptom"),
  };
}

/** How each model did in each word, by block; model by model, since each one's sums lie together. */
function countsByBlock(groups: readonly MachineGroup[], kind: WordKind, range: BlockRange): GroupCount[][] {
  const blocks: GroupCount[][] = Array.from({ length: range.count }, () => []);
  for (const { lines, models } of groups) {
    for (const line of lines) {
      if (line.kind !== kind) continue;
      const { rest, sumsOf } = line;
      for (const model of models.keys()) {
        const sums = sumsOf(model);
        if (sums === undefined) continue;
        rest.spans.forEach((span, block) => {
          if (span === undefined || !rest.has(model, block)) return;
          const counts = againstLine(line, { models: [model], sums }, block, span);
          if (counts.expected >= fewestExpected) blocks[block]?.push(counts);
        });
      }
    }
  }
  return blocks;
}

/** What the yearly wave makes of each week of a record, and of the half-year after it. */
export function seasonByWeek(
  record: Pick<SignalRecord, "firstWeek" | "lastWeek">,
  seasons: readonly Season[],
  { first, count }: BlockRange,
): Float64Array {
  return Float64Array.from({ length: weeksOf(record) + weeksAhead }, (_, place) => {
    const week = record.firstWeek + place;
    return seasonFactor(seasons[Math.min(blockOf(week) - first, count - 1)] ?? noSeason, week);
  });
}

/** The yearly wave of one product type, learnt at each block from the whole years before it. */
export function seasonByBlock(record: SignalRecord, type: TypeRecord, range: BlockRange): readonly Season[] {
  const failures = new Float64Array(weeksOf(record));
  const unitWeeks = new Float64Array(weeksOf(record));
  for (const exposure of type.models.values()) {
    for (let week = 0; week < unitWeeks.length; week++) {
      for (let entry = exposure.starts[week] ?? 0; entry < (exposure.starts[week + 1] ?? 0); entry++) {
        unitWeeks[week] = (unitWeeks[week] ?? 0) + (exposure.unitWeeks[entry] ?? 0);
      }
    }
  }
  for (const line of type.lines) {
    if (line.kind !== "component") continue;
    for (const { columns, from, until } of line.eventsOf.values()) {
      for (let at = from; at < until; at++) {
        const place = (columns.failedWeek[at] ?? 0) - record.firstWeek;
        if (place >= 0 && place < failures.length) failures[place] = (failures[place] ?? 0) + (columns.jobs[at] ?? 0);
      }
    }
  }
  return Array.from({ length: range.count }, (_, block) => {
    const span = baselineOf(block);
    return span === undefined ? noSeason : seasonOf(weeksIn(span, range, record.firstWeek, failures, unitWeeks));
  });
}

function weeksIn(
  { from, until }: Span,
  { first }: BlockRange,
  firstWeek: number,
  failures: Float64Array,
  unitWeeks: Float64Array,
) {
  return Array.from({ length: (until - from) * weeksPerBlock }, (_, i) => (first + from) * weeksPerBlock + i)
    .filter((week) => week >= firstWeek)
    .map((week) => ({ week, observed: failures[week - firstWeek] ?? 0, expected: unitWeeks[week - firstWeek] ?? 0 }));
}
