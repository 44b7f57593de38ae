import { seededDraws } from "@/lib/statistics/demand/seeded-draws";
import { lengthOfMonth } from "./fleet/length-of-month";
import { seasonIndex } from "./season-index";

/** Busy and quiet months that several series have together. */
export interface CommonPace {
  /** Variance of the factor that all of them are multiplied by in a month; 0 where they have nothing in common. */
  readonly variance: number;
  /** How often months put together at random vary as much. */
  readonly p: number;
}

/** A common pace that is not there is taken for one this often. Own choice, no source; so is the number of shuffles, the least that shows it. */
const level = 0.05;
const shuffles = 199;
/** Months that each month is held against: the year before it. */
const yearBefore = 12;
/** Below this nothing is told of a pace. Own choice, no source. */
const fewestMonths = 24;

/**
 * Whether components have busy and quiet months together, as a company does that grows, shrinks or closes for a week.
 * Each month is held against the mean of the year before it; where the sums of those differences vary more than months
 * of the same components put together at random, the excess is what they have in common.
 * @param series of one length, a number for each month, oldest first; seasons and lengths of months taken out
 * @returns 0 for the variance where months are too few, or chance explains the excess
 * Source: permutation test, Fisher (1935), The Design of Experiments, section 21.
 * Checked: tests/forecast/common-pace.test.ts, by how often it finds what is not there, and a known common pace.
 */
export function commonPace(series: readonly (readonly number[])[]): CommonPace {
  const months = (series[0]?.length ?? 0) - yearBefore;
  const apart: CommonPace = { variance: 0, p: 1 };
  if (months < fewestMonths || series.length < 2) return apart;
  const differences = series.map((counts) => {
    const each = Array.from(
      { length: months },
      (_, m) => (counts[m + yearBefore] ?? 0) - meanOf(counts.slice(m, m + yearBefore)),
    );
    // A steady growth is in every year before: what is in common are the months, not the trend.
    const mean = meanOf(each);
    return each.map((value) => value - mean);
  });
  const alone = differences.reduce((sum, each) => sum + squares(each), 0);
  if (alone === 0) return apart;
  const found = squares(summed(differences)) / alone;
  const draws = seededDraws(1);
  let asMuch = 1;
  for (let i = 0; i < shuffles; i++) {
    const mixed = squares(summed(differences.map((each) => shuffled(each, draws.uniform)))) / alone;
    if (mixed >= found) asMuch += 1;
  }
  const p = asMuch / (shuffles + 1);
  if (p > level) return { variance: 0, p };
  const monthly = meanOf(summed(series).slice(yearBefore));
  return { variance: (Math.max(0, found - 1) * alone) / months / monthly ** 2, p };
}

/** The same months as if each were as long as the others, and had no season where the counts show one. */
export function evenedMonths(history: readonly number[], firstMonth: number): readonly number[] {
  const season = seasonIndex(history);
  return history.map((count, i) => count / (season?.[i % 12] ?? lengthOfMonth[(firstMonth + i) % 12] ?? 1));
}

/** A factor for each month of each future, 1 on average, the same for all that is added up. */
export function drawnPace({ variance }: CommonPace, months: number): Float64Array | undefined {
  if (variance === 0) return undefined;
  const draws = seededDraws(2);
  return Float64Array.from({ length: months }, () => draws.gamma(1 / variance) * variance);
}

function summed(series: readonly (readonly number[])[]): number[] {
  return (series[0] ?? []).map((_, month) => series.reduce((sum, each) => sum + (each[month] ?? 0), 0));
}

function squares(values: readonly number[]): number {
  return values.reduce((sum, value) => sum + value * value, 0);
}

function meanOf(values: readonly number[]): number {
  return values.reduce((sum, value) => sum + value, 0) / Math.max(1, values.length);
}

/** Fisher & Yates, in the form of Durstenfeld (1964). */
function shuffled(values: readonly number[], uniform: () => number): number[] {
  const mixed = [...values];
  for (let i = mixed.length - 1; i > 0; i--) {
    const j = Math.floor(uniform() * (i + 1));
    [mixed[i], mixed[j]] = [mixed[j] ?? 0, mixed[i] ?? 0];
  }
  return mixed;
}
