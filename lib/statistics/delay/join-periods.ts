import { requireWholeNumber } from "../require";
import type { ReportedPeriod } from "./corrected-count";
import type { EstimatedDelay } from "./reporting-delay";

/** One period, or several that are taken together, with what the delay distribution says of its days. */
export interface JoinedPeriod {
  readonly reports: number;
  readonly days: readonly DayShare[];
  /** Sum over its days of the share that can be on record; above 0. */
  readonly share: number;
  /** Events to come per event on record. */
  readonly growth: number;
}

interface DayShare {
  readonly age: number;
  readonly within: number;
  readonly relativeVariance: number;
}

/**
 * Joins periods, newest first, until each holds enough reports; what is left over at the old end goes to the last.
 * @returns undefined where no day of any period is old enough for a report
 */
export function joinPeriods(
  periods: readonly ReportedPeriod[],
  delay: EstimatedDelay,
  fewestTogether: number,
): readonly JoinedPeriod[] | undefined {
  requirePeriods(periods);
  const joined: JoinedPeriod[] = [];
  let open: JoinedPeriod = joinedPeriod(0, []);
  for (const { ages, reports } of periods) {
    open = joinedPeriod(open.reports + reports, [...open.days, ...ages.map((age) => dayShare(delay, age))]);
    if (open.reports < fewestTogether || open.share === 0) continue;
    joined.push(open);
    open = joinedPeriod(0, []);
  }
  if (open.days.length > 0) {
    const last = joined.pop();
    joined.push(joinedPeriod(open.reports + (last?.reports ?? 0), [...(last?.days ?? []), ...open.days]));
  }
  return joined.length > 0 && joined.every(({ share }) => share > 0) ? joined : undefined;
}

function joinedPeriod(reports: number, days: readonly DayShare[]): JoinedPeriod {
  const share = days.reduce((sum, { within }) => sum + within, 0);
  const missing = days.reduce((sum, { within }) => sum + (1 - within), 0);
  return { reports, days, share, growth: share > 0 ? missing / share : 0 };
}

/** Nothing is known of delays beyond the longest seen: by then all that will ever be reported has been. */
function dayShare({ steps }: EstimatedDelay, age: number): DayShare {
  const step = steps[age];
  if (step === undefined) return { age, within: 1, relativeVariance: 0 };
  const relativeVariance = step.within > 0 ? (step.standardError / step.within) ** 2 : 0;
  return { age, within: step.within, relativeVariance };
}

function requirePeriods(periods: readonly ReportedPeriod[]): void {
  if (periods.length === 0) throw new RangeError("periods must not be empty");
  periods.forEach(({ ages, reports }, i) => {
    if (ages.length === 0) throw new RangeError(`periods[${i}].ages must name at least one day`);
    requireWholeNumber(`periods[${i}].reports`, reports);
    for (const age of ages) requireWholeNumber(`periods[${i}].ages`, age);
  });
}
