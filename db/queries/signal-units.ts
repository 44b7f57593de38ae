import { type SQL, sql } from "drizzle-orm";
import { dayFromNumber } from "@/lib/calendar/day-number";
import { daysPerWeek, firstDayOf } from "@/lib/signals/weeks";

// The rules by which signals count units and weeks: the run, the page of a signal and its lists must mean the same ones.

/** Day from which unit `u` is observed: the rule of refresh-counts.ts. */
export const observedFrom = sql`select greatest(u.in_service_on, shop.records_from, u.recorded_from) as observed_from`;

/** Units `u`, each with the day from which it is observed, `o`. */
export const observedUnits = sql`units u left join shop on true cross join lateral (${observedFrom}) o`;

/** Of `observedUnits`, those that carry exposure. */
export const carriesExposure = sql`(u.in_register and u.in_service_on is not null and (u.retired_on is null or u.retired_on >= o.observed_from))`;

/** Whether job `j` falls into the time for which its unit carries exposure. */
export const fallsIntoExposure = sql`(j.failed_on >= o.observed_from and (u.retired_on is null or j.failed_on <= u.retired_on))`;

const mondayOfWeek0 = dayFromNumber(firstDayOf(0));

/** Number of a day's week, as `weekOf` has it. */
export function weekNumberOf(day: SQL): SQL {
  return sql`floor((${day} - date '${sql.raw(mondayOfWeek0)}') / ${sql.raw(`${daysPerWeek}.0`)})::int`;
}

/** Middle of the days on which the unit may have been made. */
export const madeOn = sql`(u.made_from + (u.made_until - u.made_from) / 2)`;

/** Longest span of days that still tells the half-year: a quarter. */
const halfSpan = 92;

/** Half-year of production, as `halfOfDay` numbers it; unknown over a longer span. */
export const madeHalf = sql`case when u.made_until - u.made_from <= ${sql.raw(String(halfSpan))} then
  2 * (extract(year from ${madeOn})::int - 1970) + case when extract(month from ${madeOn}) > 6 then 1 else 0 end end`;
