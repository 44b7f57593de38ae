// The two plain alternatives: a list of the highest raw rates, and a 3-sigma rule on monthly counts.
import type { SignalRecord } from "@/lib/signals/signal-record";
import { weeksPerYear } from "@/lib/signals/weeks";

export interface PlainCell {
  readonly model: number;
  readonly kind: "component" | "symptom";
  readonly word: string;
  /** By week of the record, as on record by the end of each month; late jobs count in the month in which they are known. */
  readonly counts: Float64Array;
  readonly unitWeeks: Float64Array;
}

export const monthWeeks = 4;
const listLength = 10;
/** One or two failures in a month would be beyond three deviations in every quiet cell. */
const fewestInMonth = 3;

/** Counts by model, component and symptom, without a look at ages. */
export function plainCells(record: SignalRecord): PlainCell[] {
  const weeks = record.lastWeek - record.firstWeek + 1;
  const unitWeeks = record.models.map(() => new Float64Array(weeks));
  for (const { model, changes } of record.cohorts) {
    const own = unitWeeks[model] ?? new Float64Array();
    let units = 0;
    changes.forEach(([week, change], index) => {
      units += change;
      const until = Math.min(changes[index + 1]?.[0] ?? record.lastWeek + 1, record.lastWeek + 1);
      for (let at = Math.max(week, record.firstWeek); at < until; at++) {
        own[at - record.firstWeek] = (own[at - record.firstWeek] ?? 0) + units;
      }
    });
  }
  const cells = new Map<string, PlainCell>();
  for (const jobs of record.jobs) {
    for (const [kind, word] of [
      ["component", jobs.failed],
      ["symptom", jobs.symptom],
    ] as const) {
      if (word === undefined) continue;
      const name = `${jobs.model} ${kind} ${word}`;
      const known = cells.get(name);
      const cell = known ?? {
        model: jobs.model,
        kind,
        word,
        counts: new Float64Array(weeks),
        unitWeeks: unitWeeks[jobs.model] ?? new Float64Array(),
      };
      cells.set(name, cell);
      const place = jobs.knownWeek - record.firstWeek;
      if (place >= 0 && place < weeks) cell.counts[place] = (cell.counts[place] ?? 0) + jobs.jobs;
    }
  }
  return [...cells.values()];
}

/** The ten highest failure rates of the last year. */
export function highestRates(cells: readonly PlainCell[], week: number): PlainCell[] {
  return cells
    .map((cell) => {
      const unitWeeks = sum(cell.unitWeeks, week - weeksPerYear + 1, week);
      return { cell, rate: unitWeeks === 0 ? 0 : sum(cell.counts, week - weeksPerYear + 1, week) / unitWeeks };
    })
    .toSorted((a, b) => b.rate - a.rate)
    .slice(0, listLength)
    .map(({ cell }) => cell);
}

/** Cells whose month stands three standard deviations above the mean of the two years of months before. */
export function beyondThreeSigma(cells: readonly PlainCell[], week: number): PlainCell[] {
  return cells.filter(({ counts }) => {
    const months = Array.from({ length: 24 }, (_, ago) => {
      const last = week - monthWeeks * (ago + 1);
      return sum(counts, last - monthWeeks + 1, last);
    });
    const mean = months.reduce((total, count) => total + count, 0) / months.length;
    const spread = Math.sqrt(months.reduce((total, count) => total + (count - mean) ** 2, 0) / (months.length - 1));
    const month = sum(counts, week - monthWeeks + 1, week);
    return month >= fewestInMonth && month > mean + 3 * spread;
  });
}

function sum(values: Float64Array, from: number, to: number): number {
  let total = 0;
  for (let at = Math.max(0, from); at <= to; at++) total += values[at] ?? 0;
  return total;
}
