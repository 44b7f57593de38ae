import { sql } from "drizzle-orm";
import type { Day } from "@/lib/calendar/day";
import type { Reader } from "../database-types";

/** Technicians who closed a job since a day, or whose truck is kept, by name. */
export async function loadTechnicians(db: Reader, since: Day): Promise<readonly string[]> {
  const rows = await db.rows<{ name: string }>(sql`
    select technician as name from jobs where completed_on >= ${since}::date and btrim(technician) <> ''
    union select place from stock_levels where place <> '' order by 1`);
  return rows.map(({ name }) => name);
}

/** Number of the order line that was added last; 0 where there is none. */
export async function orderIdOfLast(db: Reader): Promise<number> {
  const [row] = await db.rows<{ id: number | null }>(sql`select max(order_id) as id from part_orders`);
  return row?.id ?? 0;
}
