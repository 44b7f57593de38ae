import { type SQL, sql } from "drizzle-orm";
import type { Day } from "@/lib/calendar/day";
import type { Reader } from "../database-types";

export const visitDimensions = [
  "component",
  "model",
  "maker",
  "type",
  "symptom",
  "cause",
  "payer",
  "quarter",
  "technician",
] as const;
export type VisitDimension = (typeof visitDimensions)[number];

export interface VisitQuestion {
  readonly by: readonly VisitDimension[];
  readonly from: Day | undefined;
  /** First day no more. */
  readonly until: Day;
}

/** Closed jobs of one group: how many were done at the first visit, and how many were returned to. */
export interface VisitGroup {
  /** As shown, one for each dimension; undefined where the job does not say. */
  readonly names: readonly (string | undefined)[];
  readonly jobs: number;
  /** Jobs that say how many visits they took. */
  readonly withVisits: number;
  readonly firstVisit: number;
  /** Jobs that a later one calls itself a return to. */
  readonly calledBack: number;
}

/** Returns are linked by the later job's own word; suggestions are not counted. */
export async function loadVisitShares(db: Reader, { by, from, until }: VisitQuestion): Promise<VisitGroup[]> {
  const names = by.length === 0 ? sql`'{}'::text[]` : sql`array[${sql.join(by.map(nameOf), sql`, `)}]`;
  return await db.rows<VisitGroup & Record<string, unknown>>(sql`
    select ${names} as names, count(*)::int as jobs, count(*) filter (where j.visits > 0)::int as "withVisits",
      count(*) filter (where j.visits = 1)::int as "firstVisit", count(*) filter (where r.callback_of is not null)::int as "calledBack"
    from jobs j join units u using (unit_id) join models m using (model_id) join makers k on k.maker_id = m.maker_id
    left join components c on c.key = j.component left join symptoms s on s.key = j.symptom
    left join (select distinct callback_of from jobs where callback_of is not null and status = 'closed') r on r.callback_of = j.job_number
    where j.counted_as <> 'nothing' and j.completed_on < ${until} and (${from ?? null}::date is null or j.completed_on >= ${from ?? null}::date)
    group by 1 order by 1`);
}

function nameOf(dimension: VisitDimension): SQL {
  switch (dimension) {
    case "component":
      return sql`coalesce(c.name, j.component)`;
    case "model":
      return sql`k.name || ' ' || m.number`;
    case "maker":
      return sql`k.name`;
    case "type":
      return sql`m.product_type::text`;
    case "symptom":
      return sql`coalesce(s.name, j.symptom)`;
    case "cause":
      return sql`j.cause::text`;
    case "payer":
      return sql`j.payer::text`;
    case "quarter":
      return sql`to_char(j.completed_on, 'YYYY "quarter" Q')`;
    case "technician":
      return sql`j.technician`;
  }
}
