import { seededDraws } from "@/lib/statistics/demand/seeded-draws";
import type { TotalRange } from "./stored-total";

/** Money of the jobs of one week that payers have had time to answer, in cents. */
export interface AnsweredWeek {
  /** Cost of all parts fitted, what was paid for parts, and covered parts that nobody claimed. */
  readonly partsCents: number;
  readonly paidCents: number;
  readonly unclaimedCents: number;
}

export interface PaidBack {
  /** What is paid back of a year's spend at the pace of those weeks, and what would be were everything claimed. */
  readonly asNow: TotalRange;
  readonly withUnclaimed: TotalRange;
}

/** Enough that a range moves by less than it is rounded to. Own choice, no source. */
const futures = 2000;

/**
 * What warranty pays back of a coming year's parts: the share that it paid on answered jobs, as far as those weeks tell
 * it, times what the year may cost. Weeks are weighed anew in every future, so that a share that rests on few large
 * claims is as unsure as it is; within a week claims may hang together as they like.
 * @param yearCents what the year's parts may cost, values of equal chance
 * @returns undefined where no part was fitted in those weeks, or nothing is known of the spend
 * Source: the Bayesian bootstrap, Rubin (1981), Annals of Statistics 9, 130-134.
 * Checked: tests/forecast/paid-back.test.ts, by hand.
 */
export function paidBack(weeks: readonly AnsweredWeek[], yearCents: readonly number[]): PaidBack | undefined {
  if (yearCents.length === 0 || weeks.every(({ partsCents }) => partsCents <= 0)) return undefined;
  const draws = seededDraws(1);
  const drawn = Array.from({ length: futures }, () => {
    let [parts, paid, unclaimed] = [0, 0, 0];
    for (const week of weeks) {
      const weight = draws.gamma(1);
      parts += weight * week.partsCents;
      paid += weight * week.paidCents;
      unclaimed += weight * week.unclaimedCents;
    }
    const spend = yearCents[Math.floor(draws.uniform() * yearCents.length)] ?? 0;
    return { asNow: (spend * paid) / parts, withUnclaimed: (spend * (paid + unclaimed)) / parts };
  });
  return {
    asNow: rangeOf(drawn.map(({ asNow }) => asNow)),
    withUnclaimed: rangeOf(drawn.map(({ withUnclaimed }) => withUnclaimed)),
  };
}

function rangeOf(values: readonly number[]): TotalRange {
  const sorted = values.toSorted((a, b) => a - b);
  const at = (share: number) => Math.round(sorted[Math.floor(share * (sorted.length - 1))] ?? 0);
  const mean = Math.round(values.reduce((sum, value) => sum + value, 0) / values.length);
  return { mean, low60: at(0.2), high60: at(0.8), low90: at(0.05), high90: at(0.95) };
}
