import { type SQL, sql } from "drizzle-orm";
import { day } from "@/lib/calendar/day";
import { dayNumber } from "@/lib/calendar/day-number";
import { daysPerWeek, weekOf } from "@/lib/signals/weeks";
import * as placed from "../placed-units";

// The rules by which signals count units and weeks: the run, the page of a signal and its lists must mean the same ones.

/** Day from which unit `u` is observed: the rule of refresh-counts.ts. */
export const observedFrom = sql`select greatest(u.in_service_on, shop.records_from, u.recorded_from) as observed_from`;

/** Units `u`, each with the day from which it is observed, `o`. */
export const observedUnits = sql`units u left join shop on true cross join lateral (${observedFrom}) o`;

/** Of `observedUnits`, those that carry exposure. */
export const carriesExposure = sql`(u.in_register and u.in_service_on is not null and (u.retired_on is null or u.retired_on >= o.observed_from))`;

/** Whether job `j` falls into the time for which its unit carries exposure. */
export const fallsIntoExposure = sql`(j.failed_on >= o.observed_from and (u.retired_on is null or j.failed_on <= u.retired_on))`;

/** A Monday before all days, so that whole numbers can be divided: millions of rows are asked. */
const longAgo = day("0001-01-01");
const weeksSinceThen = -weekOf(dayNumber(longAgo));

/** Number of a day's week, as `weekOf` has it. */
export function weekNumberOf(day: SQL): SQL {
  return sql`((${day} - date '${sql.raw(longAgo)}') / ${sql.raw(String(daysPerWeek))} - ${sql.raw(String(weeksSinceThen))})`;
}

/** Middle of the days on which unit `u` may have been made, and its half-year of production. */
export const madeOn = sql.raw(placed.madeOn);
export const madeHalf = sql.raw(placed.madeHalf);
