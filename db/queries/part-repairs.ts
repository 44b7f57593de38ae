import { sql } from "drizzle-orm";
import type { Day } from "@/lib/calendar/day";
import type { Reader } from "../database-types";

/** How repairs of a component took a part, over a span: by it and by the numbers that are counted with it. */
export interface PartRepairs {
  /** Closed repairs of failures of the component, on machines of the part's maker where it has one. */
  readonly failures: number;
  readonly withPart: number;
  readonly pieces: number;
}

export interface PartRepairQuestion {
  readonly component: string;
  readonly maker: string | undefined;
  readonly spellings: readonly string[];
  readonly since: Day;
  readonly until: Day;
}

export async function loadPartRepairs(db: Reader, asked: PartRepairQuestion): Promise<PartRepairs> {
  const { component, maker, spellings, since, until } = asked;
  const [row] = await db.rows<Record<string, unknown> & PartRepairs>(sql`
    select count(*)::int as failures, count(used.pieces)::int as "withPart", coalesce(sum(used.pieces), 0)::int as pieces
    from jobs j join units u using (unit_id) join makers k on k.maker_id = u.maker_id
    left join lateral (select sum(p.quantity) as pieces from part_lines p where p.unit_id = j.unit_id and p.job_id = j.job_id
      and p.role = 'fitted' and p.part_number = any(${sql.param([...spellings])}::text[])) used on true
    where j.component = ${component} and j.counted_as = 'failure' and j.completed_on >= ${since}::date and j.completed_on <= ${until}::date
      and (${maker ?? null}::text is null or k.name = ${maker ?? null})`);
  return row ?? { failures: 0, withPart: 0, pieces: 0 };
}

/** The one maker on whose machines a part was used; undefined where there were several, or none. */
export async function loadMakerOfPart(db: Reader, spellings: readonly string[]): Promise<string | undefined> {
  const rows = await db.rows<{ name: string }>(sql`
    select distinct k.name from part_lines p join units u using (unit_id) join makers k on k.maker_id = u.maker_id
    where p.role = 'fitted' and p.part_number = any(${sql.param([...spellings])}::text[]) limit 2`);
  return rows.length === 1 ? rows[0]?.name : undefined;
}
