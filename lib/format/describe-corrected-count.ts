import type { CorrectedCount } from "@/lib/statistics/delay/corrected-count";
import { formatCount, formatCounted } from "./format-count";
import { type CountedNoun, countedNouns } from "./format-estimate";

interface Wording {
  /** Weeks that the count runs over, back from the last known day. */
  readonly weeks: number;
  /** What was counted; jobs where absent. */
  readonly counted?: CountedNoun;
}

/**
 * "Some of the last 5 weeks’ jobs are still on their way: 38 on record, about 45 expected, 41 to 52." Undefined where
 * nothing more is to be expected.
 */
export function describeCorrectedCount(
  { events, corrected, lo, hi }: Extract<CorrectedCount, { kind: "corrected" }>,
  { weeks, counted = "jobs" }: Wording,
): string | undefined {
  if (hi === events) return undefined;
  const noun = countedNouns[counted].many;
  const span = weeks === 1 ? "the last week’s" : `the last ${formatCounted(weeks, "week")}’`;
  const expected =
    Math.round(corrected) === events ? "perhaps no more" : `about ${formatCount(Math.round(corrected))} expected`;
  return `Some of ${span} ${noun} are still on their way: ${formatCount(events)} on record, ${expected}, ${formatCount(lo)} to ${formatCount(hi)}.`;
}
