import { testedSeason } from "../tested-season";
import { lengthOfMonth } from "./length-of-month";

/** One month of one kind of machine: failures of all its components, and machines that came under watch and left it. */
export interface FleetMonth {
  /** Months since the year 0. */
  readonly month: number;
  readonly failures: number;
  readonly came: number;
  readonly left: number;
}

/** A season that is not there is taken for one this often: kinds of machines are few, and their failures many. Own choice, no source. */
const level = 0.01;

/**
 * How many times an even day's wear a day of each month of the year brings to one kind of machine, January first.
 * @param months before `until`, ascending; months without any of it are left out
 * @param until first month that is not looked at, in months since the year 0
 * @returns undefined where the failures show no season
 */
export function wearOfMonths(months: readonly FleetMonth[], until: number): readonly number[] | undefined {
  const events = new Array<number>(12).fill(0);
  const exposure = new Array<number>(12).fill(0);
  const byMonth = new Map(months.map((each) => [each.month, each]));
  const first = months[0]?.month ?? until;
  let watched = 0;
  for (let month = first; month < until; month++) {
    const { failures = 0, came = 0, left = 0 } = byMonth.get(month) ?? {};
    const place = month % 12;
    // Who comes or leaves in a month is there for half of it on average.
    exposure[place] = (exposure[place] ?? 0) + (watched + (came - left) / 2) * (lengthOfMonth[place] ?? 1);
    events[place] = (events[place] ?? 0) + failures;
    watched += came - left;
  }
  if (exposure.some((time) => !(time > 0))) return undefined;
  const found = testedSeason({ events, exposure, dispersion: 1, level });
  return found.kind === "season" ? found.factors : undefined;
}
