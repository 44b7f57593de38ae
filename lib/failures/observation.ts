import type { DayNumber } from "@/lib/calendar/day-number";
import type { JobPlace } from "./cells";
import type { RateQuestion } from "./rate-question";

/** Ages in whole days during which a unit is watched: from `entry` up to but not including `exit`. */
export interface ObservedAges {
  readonly entry: number;
  readonly exit: number;
}

/**
 * The part of a unit's life that the question looks at: after it entered service, after records begin, inside the
 * calendar period, before it was retired. Undefined where nothing is left.
 */
export function observedAges(place: JobPlace, period: Pick<RateQuestion, "from" | "until">): ObservedAges | undefined {
  const from = Math.max(place.observedFrom, period.from ?? Number.NEGATIVE_INFINITY);
  const until = Math.min(place.retiredOn ?? Number.POSITIVE_INFINITY, period.until);
  return until > from ? { entry: from - place.inServiceOn, exit: until - place.inServiceOn } : undefined;
}

export type Placing =
  | "counted"
  | "unit carries no exposure"
  | "before records begin"
  | "outside the period"
  | "after the unit was retired";

/**
 * Whether a job is inside its unit's window. The day of retirement belongs to the window, since the failure that
 * ends a unit is often why it was retired; the first day of records does too; the cut-off day does not.
 */
export function placeJob(
  place: JobPlace | undefined,
  failedOn: DayNumber,
  period: Pick<RateQuestion, "from" | "until">,
): Placing {
  if (place === undefined) return "unit carries no exposure";
  if (failedOn < place.observedFrom) return "before records begin";
  if (place.retiredOn !== undefined && failedOn > place.retiredOn) return "after the unit was retired";
  if (failedOn >= period.until || (period.from !== undefined && failedOn < period.from)) return "outside the period";
  return "counted";
}
