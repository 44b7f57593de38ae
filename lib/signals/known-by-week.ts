import type { EstimatedDelay } from "@/lib/statistics/delay/reporting-delay";
import { daysPerWeek } from "./weeks";

/** From here on a week counts as complete: later jobs are rare, and each shows in the week in which it comes. */
const complete = 0.995;
const mostWeeks = 26;

/**
 * Share of a week's calls that are on record by the end of each later week, averaged over its seven days.
 * @param delay  from call to closing; undefined where too few jobs tell it: then every week counts as complete
 * Checked: tests/signals/known-by-week.test.ts, by hand.
 */
export function knownByWeek(delay: EstimatedDelay | undefined): readonly number[] {
  if (delay === undefined) return [1];
  const within = (day: number) => delay.steps[day]?.within ?? 1;
  const shares: number[] = [];
  for (let week = 0; week < mostWeeks; week++) {
    let sum = 0;
    for (let day = 0; day < daysPerWeek; day++) sum += within(week * daysPerWeek + day);
    if (sum / daysPerWeek >= complete) break;
    shares.push(sum / daysPerWeek);
  }
  return [...shares, 1];
}
