import { sql } from "drizzle-orm";
import type { Day } from "@/lib/calendar/day";
import type { PhotoSubject } from "@/lib/domain/job";
import type { Reader } from "../database-types";

/** An open job as the technician's list shows it: no word of the complaint, which may name the customer. */
export interface OpenJobLine {
  readonly jobNumber: string;
  readonly requestedOn: Day;
  readonly technician: string | undefined;
  readonly symptom: string;
  readonly model: string;
  readonly maker: string;
  readonly answers: number;
}

/** @param technician  whose; undefined for everybody's. `orNobodys` adds those that nobody was named for. */
export async function loadOpenJobs(
  db: Reader,
  technician: string | undefined,
  { orNobodys }: { readonly orNobodys: boolean } = { orNobodys: false },
): Promise<readonly OpenJobLine[]> {
  const mine =
    technician === undefined
      ? sql`true`
      : sql`(o.technician = ${technician} or (${orNobodys} and o.technician is null))`;
  const rows = await db.rows<Omit<OpenJobLine, "technician"> & { technician: string | null }>(sql`
    select o.job_number as "jobNumber", o.requested_on::text as "requestedOn", o.technician, o.symptom,
      m.number as model, k.name as maker,
      (select count(*)::integer from sheet_answers a where a.unit_id = o.unit_id and a.job_id = o.job_id) as answers
    from open_jobs o join units u using (unit_id) join models m using (model_id) join makers k on k.maker_id = m.maker_id
    where o.closed_at is null and ${mine} order by o.requested_on, o.job_number limit 200`);
  return rows.map(({ technician: name, ...row }) => ({ ...row, technician: name ?? undefined }));
}

/** Something that the desk lacks for a claim and only the technician can give. */
export interface AskLine {
  readonly jobNumber: string;
  readonly item: string;
  readonly label: string;
  readonly check: string | undefined;
  readonly subject: PhotoSubject | undefined;
  readonly technician: string | undefined;
  readonly askedOn: Day;
  readonly answer: "given" | "cannot be had" | undefined;
  readonly note: string;
}

/** @param of  one job, with what was answered; or all that is still asked, of one technician where named */
export async function loadAsks(
  db: Reader,
  of: { readonly jobNumber: string } | { readonly open: true; readonly technician?: string | undefined },
): Promise<readonly AskLine[]> {
  const which =
    "jobNumber" in of
      ? sql`j.job_number = ${of.jobNumber}`
      : of.technician === undefined
        ? sql`a.answered_at is null`
        : sql`a.answered_at is null and a.technician = ${of.technician}`;
  const rows = await db.rows<Nullable<AskLine>>(sql`
    select j.job_number as "jobNumber", a.item, a.label, a.check_key as check, a.subject, a.technician,
      (a.asked_at at time zone coalesce((select time_zone from shop), 'UTC'))::date::text as "askedOn", a.answer, a.note
    from technician_asks a join jobs j on j.unit_id = a.unit_id and j.job_id = a.job_id
    where ${which} order by a.asked_at, j.job_number, a.item limit 200`);
  return rows.map((row) => ({
    ...row,
    check: row.check ?? undefined,
    subject: row.subject ?? undefined,
    technician: row.technician ?? undefined,
    answer: row.answer ?? undefined,
  }));
}

type Nullable<Row> = {
  readonly [Key in keyof Row]: undefined extends Row[Key] ? Exclude<Row[Key], undefined> | null : Row[Key];
};

/** Names of technicians on jobs of the last two years, for choosing. */
export async function loadTechnicians(db: Reader): Promise<readonly string[]> {
  const rows = await db.rows<{ name: string }>(sql`
    select distinct technician as name from jobs where technician is not null
      and completed_on >= (select max(completed_on) from jobs) - 730 order by 1 limit 200`);
  return rows.map(({ name }) => name);
}

/** Fault codes that earlier jobs on machines of this maker showed, the commonest first. */
export async function loadFaultCodes(db: Reader, maker: string): Promise<readonly string[]> {
  const rows = await db.rows<{ code: string }>(sql`
    select r.word as code from readings r join units u using (unit_id) join makers k on k.maker_id = u.maker_id
    where k.name = ${maker} and r.outcome = 'code' group by 1 order by count(*) desc, 1 limit 30`);
  return rows.map(({ code }) => code);
}
