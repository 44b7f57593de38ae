import { poissonProbability } from "../discrete/poisson";
import { requirePositive, requireWholeNumber } from "../require";

/**
 * Exact chance that the fullest of several cells holds at least a given number of all events, when each event falls
 * into a cell at random: are the failures of one production week more than the luck of one week among many?
 * @param events  whole number, 0 or more
 * @param weights one per cell, above 0: the share of events that each cell draws, on any scale (exposure)
 * @param atLeast whole number
 * @returns probability in 0..1
 * @throws RangeError for an argument outside its range
 * Source: Levin (1981), Annals of Statistics 9, 1123-1126: independent Poisson cells, given their total.
 * Checked: tests/statistics/change.test.ts (case D04), by listing every arrangement.
 */
export function multinomialMaximumAtLeast({ events, weights, atLeast }: MultinomialMaximum): number {
  requireWholeNumber("events", events);
  requireWholeNumber("atLeast", atLeast);
  if (weights.length === 0) throw new RangeError("weights must hold at least one cell");
  weights.forEach((weight, i) => {
    requirePositive(`weights[${i}]`, weight);
  });
  if (atLeast === 0) return 1;
  if (atLeast > events) return 0;
  const total = weights.reduce((sum, weight) => sum + weight, 0);
  let sums: readonly number[] = [1];
  for (const weight of weights) sums = addCell({ sums, mean: (events * weight) / total, atMost: atLeast - 1, events });
  const noneReaches = (sums[events] ?? 0) / poissonProbability(events, events);
  return Math.min(1, Math.max(0, 1 - noneReaches));
}

export interface MultinomialMaximum {
  readonly events: number;
  readonly weights: readonly number[];
  readonly atLeast: number;
}

interface Cell {
  readonly sums: readonly number[];
  readonly mean: number;
  readonly atMost: number;
  readonly events: number;
}

/** Distribution of the running total after one more cell that must stay at or below its limit. */
function addCell({ sums, mean, atMost, events }: Cell): readonly number[] {
  const chances = Array.from({ length: atMost + 1 }, (_, count) => poissonProbability(count, mean));
  const longer = new Array<number>(Math.min(events, sums.length - 1 + atMost) + 1).fill(0);
  sums.forEach((before, from) => {
    if (before === 0) return;
    const most = Math.min(atMost, events - from);
    for (let count = 0; count <= most; count++) {
      longer[from + count] = (longer[from + count] ?? 0) + before * (chances[count] ?? 0);
    }
  });
  return longer;
}
