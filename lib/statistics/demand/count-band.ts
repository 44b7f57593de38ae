import { requireProbability } from "../require";
import type { CountDistribution } from "./count-distribution";

/**
 * The run of whole counts, both ends included, that holds a wanted share of the chances as nearly as whole counts can.
 * It begins with the likeliest count and takes in the likelier neighbour until one more would lead further away from
 * the wanted share. Central limits would not do: where zero has most of the chance, the lower tail is empty, and a
 * "90 %" range from 5 % to 95 % holds nearly 97 %.
 * @param level wanted share, in (0, 1)
 * @returns low and high, and the share that they hold, which may be somewhat below or above the level
 * @throws RangeError for an argument outside its range
 * Source: highest-density region of a count, Hyndman (1996), American Statistician 50, 120-126, with the nearest
 *   instead of the next larger share, since whole counts cannot meet it exactly.
 * Checked: tests/statistics/demand/count-distribution.test.ts, by hand and by trying all runs.
 */
export function countBand(distribution: CountDistribution, level: number): CountBand {
  requireProbability("level", level);
  let low = 0;
  for (let k = 1; k < distribution.length; k++) if ((distribution[k] ?? 0) > (distribution[low] ?? 0)) low = k;
  let high = low;
  let holds = distribution[low] ?? 0;
  while (holds < level) {
    const [below, above] = [nextWithChance(distribution, low, -1), nextWithChance(distribution, high, 1)];
    const [chanceBelow, chanceAbove] = [distribution[below] ?? -1, distribution[above] ?? -1];
    const next = Math.max(chanceBelow, chanceAbove);
    if (next < 0 || Math.abs(holds + next - level) >= Math.abs(holds - level)) break;
    holds += next;
    if (chanceBelow > chanceAbove) low = below;
    else high = above;
  }
  return { low, high, holds };
}

/** The nearest count on one side that has any chance: of parts that are used by the four, five never are. */
function nextWithChance(distribution: CountDistribution, from: number, step: 1 | -1): number {
  let count = from + step;
  while (distribution[count] === 0) count += step;
  return count;
}

export interface CountBand {
  readonly low: number;
  readonly high: number;
  readonly holds: number;
}

/**
 * How much of a count lies within the central share of its forecast, when a count is spread evenly over the step that
 * its chance takes in the cumulative distribution. Its mean over many months equals the level for a true forecast,
 * whatever the steps; it is the test of a distribution that rounding to whole counts cannot flatter.
 * @returns a share in 0..1; the expected value over a randomised probability integral transform
 * Source: Czado, Gneiting & Held (2009), Biometrics 65, 1254-1261.
 */
export function shareInsideCentral(distribution: CountDistribution, level: number, outcome: number): number {
  const chance = distribution[outcome] ?? 0;
  let below = 0;
  for (let k = 0; k < Math.min(outcome, distribution.length); k++) below += distribution[k] ?? 0;
  const [from, to] = [(1 - level) / 2, (1 + level) / 2];
  if (chance <= 0) return below > from && below < to ? 1 : 0;
  return Math.max(0, Math.min(below + chance, to) - Math.max(below, from)) / chance;
}
