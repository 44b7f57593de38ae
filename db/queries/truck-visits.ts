import { sql } from "drizzle-orm";
import type { Day } from "@/lib/calendar/day";
import type { Reader } from "../database-types";

/** What each job of a technician took, and whether it was done at the first visit. */
export interface TruckVisit {
  readonly parts: readonly { readonly partNumber: string; readonly quantity: number }[];
  readonly atFirstVisit: boolean | undefined;
}

/** Closed jobs of a technician after a day, up to another, that took at least one part. */
export async function loadTruckVisits(
  db: Reader,
  technician: string,
  after: Day,
  until: Day,
): Promise<readonly TruckVisit[]> {
  const rows = await db.rows<{ numbers: string[]; quantities: number[]; first: boolean | null }>(sql`
    select array_agg(p.part_number order by p.line)::text[] as numbers, array_agg(p.quantity order by p.line)::int[] as quantities,
      min(j.first_visit_on) = min(j.completed_on) as first
    from jobs j join part_lines p using (unit_id, job_id)
    where j.technician = ${technician} and j.status = 'closed' and p.role = 'fitted'
      and j.completed_on > ${after}::date and j.completed_on <= ${until}::date
    group by j.unit_id, j.job_id order by j.unit_id, j.job_id`);
  return rows.map(({ numbers, quantities, first }) => ({
    parts: numbers.map((partNumber, i) => ({ partNumber, quantity: quantities[i] ?? 0 })),
    atFirstVisit: first ?? undefined,
  }));
}

/** Pieces of each part in a technician's truck, by the part's number in upper case, letters and digits only. */
export async function loadCarried(db: Reader, technician: string): Promise<ReadonlyMap<string, number>> {
  const rows = await db.rows<{ part_key: string; on_hand: number }>(sql`
    select part_key, on_hand from stock_levels where place = ${technician}`);
  return new Map(rows.map((row) => [row.part_key, row.on_hand]));
}
