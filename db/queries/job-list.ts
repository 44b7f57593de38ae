import { type SQL, sql } from "drizzle-orm";
import type { Day } from "@/lib/calendar/day";
import type { Cause, CountedAs } from "@/lib/domain/cause";
import type { JobStatus, PayerKind } from "@/lib/domain/job";
import type { Reader } from "../database-types";

export interface JobFilter {
  readonly maker?: string | undefined;
  readonly model?: string | undefined;
  readonly productType?: string | undefined;
  readonly component?: string | undefined;
  readonly symptom?: string | undefined;
  readonly cause?: string | undefined;
  readonly technician?: string | undefined;
  readonly payer?: PayerKind | undefined;
  /** Days of failure: first and last day looked at. */
  readonly from?: Day | undefined;
  readonly to?: Day | undefined;
  /** Age at failure in whole days: from, up to but not including. */
  readonly ageDays?: { readonly from: number; readonly until: number } | undefined;
  /** Only jobs that rates count: `failures`, or every closed `calls`; of units in the register, while they were watched. */
  readonly counted?: "failures" | "calls" | undefined;
  /** Words looked for in job number, serial, complaint, cause and correction. */
  readonly words?: string | undefined;
}

export interface JobListRow {
  readonly jobNumber: string;
  readonly unitId: string;
  readonly serial: string | undefined;
  readonly maker: string;
  readonly model: string;
  readonly status: JobStatus;
  readonly completedOn: Day;
  readonly complaint: string;
  readonly component: string | undefined;
  readonly symptom: string | undefined;
  readonly cause: Cause;
  readonly countedAs: CountedAs;
  readonly technician: string | undefined;
  readonly payer: PayerKind;
  readonly parts: number;
  readonly readings: number;
  readonly faultCodes: readonly string[];
}

export interface JobList {
  readonly total: number;
  readonly rows: readonly JobListRow[];
}

interface JobPage {
  readonly offset: number;
  /** Undefined gives all, for a file. */
  readonly limit: number | undefined;
  /** How many jobs there are without any filter, where that is known. */
  readonly allJobs?: number;
}

/** Jobs that fit the filter, the latest completed first. */
export async function loadJobList(db: Reader, filter: JobFilter, page: JobPage): Promise<JobList> {
  const isAll = Object.values(filter).every((asked) => asked === undefined);
  const source = sql`from jobs j ${joinsFor(filter)} where ${jobsWhere(filter)}`;
  const total = (isAll ? page.allJobs : undefined) ?? (await countOf(db, source));
  const rows = await db.rows<Row>(sql`
    select j.job_number, j.unit_id, u.serial, k.name as maker, m.number as model, j.status, j.completed_on::text, j.complaint, c.name as component,
      y.name as symptom, j.cause, j.counted_as, j.technician, j.payer,
      (select count(*)::int from part_lines p where p.unit_id = j.unit_id and p.job_id = j.job_id) as parts,
      (select count(*)::int from readings r where r.unit_id = j.unit_id and r.job_id = j.job_id) as readings,
      (select coalesce(array_agg(r.word order by r.number), '{}') from readings r
        where r.unit_id = j.unit_id and r.job_id = j.job_id and r.outcome = 'code') as codes
    from (select j.unit_id, j.job_id ${source} order by j.completed_on desc, j.job_number desc
      ${page.limit === undefined ? sql`` : sql`limit ${page.limit}`} offset ${page.offset}) chosen
    join jobs j using (unit_id, job_id) join units u using (unit_id) join models m on m.model_id = u.model_id join makers k on k.maker_id = m.maker_id
    left join components c on c.key = j.component left join symptoms y on y.key = j.symptom
    order by j.completed_on desc, j.job_number desc`);
  return { total, rows: rows.map(listRow) };
}

async function countOf(db: Reader, source: SQL): Promise<number> {
  const [count] = await db.rows<{ total: number }>(sql`select count(*)::int as total ${source}`);
  return count?.total ?? 0;
}

type Row = {
  job_number: string;
  unit_id: string;
  serial: string | null;
  maker: string;
  model: string;
  status: JobStatus;
  completed_on: Day;
  complaint: string;
  component: string | null;
  symptom: string | null;
  cause: Cause;
  counted_as: CountedAs;
  technician: string | null;
  payer: PayerKind;
  parts: number;
  readings: number;
  codes: string[];
};

function listRow(row: Row): JobListRow {
  return {
    jobNumber: row.job_number,
    unitId: row.unit_id,
    serial: row.serial ?? undefined,
    maker: row.maker,
    model: row.model,
    status: row.status,
    completedOn: row.completed_on,
    complaint: row.complaint,
    component: row.component ?? undefined,
    symptom: row.symptom ?? undefined,
    cause: row.cause,
    countedAs: row.counted_as,
    technician: row.technician ?? undefined,
    payer: row.payer,
    parts: row.parts,
    readings: row.readings,
    faultCodes: row.codes,
  };
}

/** Only what the filter asks about: every job has its unit and model, so that without them the count is the same and needs no unit. */
function joinsFor({ maker, model, productType, ageDays, counted, words }: JobFilter): SQL {
  const ofModel = maker !== undefined || model !== undefined || productType !== undefined;
  const ofUnit = ofModel || ageDays !== undefined || counted !== undefined || words !== undefined;
  return sql.join(
    [
      ...(ofUnit ? [sql`join units u using (unit_id)`] : []),
      ...(ofModel ? [sql`join models m on m.model_id = u.model_id join makers k on k.maker_id = m.maker_id`] : []),
      ...(counted === undefined ? [] : [sql`left join shop s on true`]),
    ],
    sql` `,
  );
}

function jobsWhere(filter: JobFilter): SQL {
  const parts: SQL[] = [sql`true`];
  const is = (column: SQL, value: string | undefined) => {
    if (value !== undefined) parts.push(sql`${column} = ${value}`);
  };
  is(sql`k.name`, filter.maker);
  is(sql`m.number`, filter.model);
  is(sql`m.product_type`, filter.productType);
  is(sql`j.component`, filter.component);
  is(sql`j.symptom`, filter.symptom);
  is(sql`j.cause`, filter.cause);
  is(sql`j.technician`, filter.technician);
  is(sql`j.payer`, filter.payer);
  if (filter.from !== undefined) parts.push(sql`j.failed_on >= ${filter.from}`);
  if (filter.to !== undefined) parts.push(sql`j.failed_on <= ${filter.to}`);
  if (filter.ageDays !== undefined) {
    parts.push(sql`j.failed_on - u.in_service_on >= ${filter.ageDays.from}`);
    if (Number.isFinite(filter.ageDays.until)) parts.push(sql`j.failed_on - u.in_service_on < ${filter.ageDays.until}`);
  }
  if (filter.counted !== undefined) {
    parts.push(filter.counted === "failures" ? sql`j.counted_as = 'failure'` : sql`j.counted_as <> 'nothing'`);
    parts.push(sql`u.in_register and j.failed_on >= greatest(u.in_service_on, s.records_from, u.recorded_from)
      and (u.retired_on is null or j.failed_on <= u.retired_on) and u.in_service_on is not null`);
  }
  if (filter.words !== undefined) {
    const like = `%${filter.words.replaceAll(/[\\%_]/g, (match) => `\\${match}`)}%`;
    parts.push(
      sql`(j.job_number ilike ${like} or u.serial ilike ${like} or j.complaint ilike ${like} or j.cause_note ilike ${like} or j.correction ilike ${like})`,
    );
  }
  return sql.join(parts, sql` and `);
}
