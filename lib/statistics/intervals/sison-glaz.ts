import { poissonAtMost, poissonProbability } from "../discrete/poisson";
import { requireProbability } from "../require";
import type { Interval } from "./interval";
import { requireClasses } from "./multinomial-scores";

/**
 * Simultaneous intervals for all shares of one whole by the method of Sison and Glaz: every class gets the same
 * arm, the upper one longer by a fraction. Shorter than Goodman's for many classes; the Edgeworth step in it is
 * an approximation, good to about four decimals, and not meant for a handful of events.
 * @param counts     one whole number per class, 0 or more; at least two classes and one event
 * @param confidence two-sided level of all classes together, in (0, 1)
 * @throws RangeError for an argument outside its range
 * Source: Sison & Glaz (1995), JASA 90, 366-369; May & Johnson (2000), Journal of Statistical Software 5(6).
 * Checked: tests/statistics/shares.test.ts (cases B05, B07).
 */
export function sisonGlaz({ counts, confidence }: SisonGlaz): readonly Interval[] {
  const total = requireClasses(counts);
  requireProbability("confidence", confidence);
  let before = 0;
  let arm = 0;
  let reached = 0;
  // Smallest whole arm with which all classes lie inside often enough; the step between is then interpolated.
  do {
    arm += 1;
    before = reached;
    reached = jointCoverage({ counts, total, arm });
  } while (reached <= confidence && arm < total);
  const whole = arm - 1;
  const fraction = reached > before ? Math.min(1, (confidence - before) / (reached - before)) : 1;
  return counts.map((count) => ({
    point: count / total,
    low: Math.max(0, (count - whole) / total),
    high: Math.min(1, (count + whole + 2 * fraction) / total),
  }));
}

export interface SisonGlaz {
  readonly counts: readonly number[];
  readonly confidence: number;
}

/** Chance that every class of a multinomial with these means stays within `arm` of its mean. */
function jointCoverage({ counts, total, arm }: { counts: readonly number[]; total: number; arm: number }): number {
  const parts = counts.map((mean) => truncatedMoments(mean, arm));
  const sum = (pick: (part: TruncatedMoments) => number) => parts.reduce((all, part) => all + pick(part), 0);
  const variance = sum((part) => part.variance);
  if (!(variance > 0)) return 0;
  const z = (total - sum((part) => part.mean)) / Math.sqrt(variance);
  const skew = sum((part) => part.third) / variance ** 1.5;
  const excess = sum((part) => part.fourth - 3 * part.variance ** 2) / variance ** 2;
  const logInside = parts.reduce((all, part) => all + Math.log(part.inside), 0);
  const density = edgeworth({ z, skew, excess }) / Math.sqrt(variance);
  return (Math.exp(logInside) * density) / poissonProbability(total, total);
}

function edgeworth({ z, skew, excess }: { z: number; skew: number; excess: number }): number {
  const polynomial =
    1 +
    (skew * (z ** 3 - 3 * z)) / 6 +
    (excess * (z ** 4 - 6 * z ** 2 + 3)) / 24 +
    (skew ** 2 * (z ** 6 - 15 * z ** 4 + 45 * z ** 2 - 15)) / 72;
  return (polynomial * Math.exp((-z * z) / 2)) / Math.sqrt(2 * Math.PI);
}

interface TruncatedMoments {
  readonly inside: number;
  readonly mean: number;
  readonly variance: number;
  readonly third: number;
  readonly fourth: number;
}

/** Central moments of a Poisson variable kept within `arm` of its mean, summed as they stand. */
function truncatedMoments(mean: number, arm: number): TruncatedMoments {
  const from = Math.max(0, mean - arm);
  const to = mean + arm;
  const weights = Array.from({ length: to - from + 1 }, (_, i) => poissonProbability(from + i, mean));
  const inside = poissonAtMost(to, mean) - poissonAtMost(from - 1, mean);
  const total = weights.reduce((sum, weight) => sum + weight, 0);
  const moment = (about: number, power: number) =>
    weights.reduce((sum, weight, i) => sum + weight * (from + i - about) ** power, 0) / total;
  const centre = moment(0, 1);
  return { inside, mean: centre, variance: moment(centre, 2), third: moment(centre, 3), fourth: moment(centre, 4) };
}
