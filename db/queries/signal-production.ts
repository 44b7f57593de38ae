import { sql } from "drizzle-orm";
import type { Day } from "@/lib/calendar/day";
import type { ProductionUnits } from "@/lib/signals/production-weeks";
import type { CellKey } from "@/lib/signals/signal-record";
import type { Reader } from "../database-types";
import { isCounted, unitsOfCell } from "./signal-machines";
import { fallsIntoExposure, madeOn, weekNumberOf } from "./signal-units";

/** How exactly the day of production must be known, in days, to say in which week a unit was made. */
const weekSpan = 7;
const monthSpan = 31;

/**
 * Units of the cell by the week in which they were made, with their weeks of service and failures. A unit known by its
 * month alone stands in the month's middle week. The half of the cell is left aside, so that the weeks around it can be seen.
 */
export async function loadProductionUnits(db: Reader, cell: CellKey, asOf: Day): Promise<ProductionUnits> {
  const model = { ...cell, madeHalf: undefined };
  const rows = await db.rows<{
    made: number;
    service: number;
    began: number;
    ended: number;
    units: number;
    failures: number;
    serialFrom: string;
    serialTo: string;
  }>(sql`
    select ${weekNumberOf(madeOn)} as made, ${weekNumberOf(sql`u.in_service_on`)} as service,
      ${weekNumberOf(sql`o.observed_from`)} as began,
      ${weekNumberOf(sql`least(u.retired_on, ${asOf}::date)`)} as ended, count(*)::int as units,
      coalesce(sum(f.failures), 0)::int as failures, min(u.serial_normalised collate "C") as "serialFrom", max(u.serial_normalised collate "C") as "serialTo"
    from ${sql`(select u.*, o.observed_from from ${unitsOfCell(model)} and u.in_service_on <= ${asOf} and u.made_until - u.made_from <= ${monthSpan}) u`}
    cross join lateral (select u.observed_from) o
    cross join lateral (select count(*)::int as failures from jobs j where j.unit_id = u.unit_id and ${isCounted(cell)}
      and j.completed_on <= ${asOf} and ${fallsIntoExposure}) f
    group by 1, 2, 3, 4`);
  const [unknown] = await db.rows<{ units: number; monthOnly: number }>(sql`
    select count(*) filter (where u.made_until is null or u.made_until - u.made_from > ${monthSpan})::int as units,
      count(*) filter (where u.made_until - u.made_from between ${weekSpan} and ${monthSpan})::int as "monthOnly"
    from ${unitsOfCell(model)} and u.in_service_on <= ${asOf}`);
  return { rows, unknownUnits: unknown?.units ?? 0, monthOnlyUnits: unknown?.monthOnly ?? 0 };
}
