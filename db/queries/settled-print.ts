import { sql } from "drizzle-orm";
import { dayFromNumber } from "@/lib/calendar/day-number";
import { firstDayOf, settledUntil } from "@/lib/signals/weeks";
import type { Reader } from "../database-types";
import type { RecordSpan } from "./signal-record";

const longAgo = sql`date '0001-01-01'`;

/** Another number whenever what is settled is worked out in another way; the engine, since it writes and reads what is kept. */
const version = `1 ${process.versions.v8}`;

/**
 * Tells whether anything has changed that a settled quarter rests on: calls before it, of which jobs were closed before
 * the quarter after it, and machines as they were before it. Rows are only added up, each with a hash: nothing that writes
 * has to know of it, and what came later does not count. Walks once through jobs and counts.
 * Checked: tests/db/weekly-signals.test.ts, for each way in which a job or a machine can change.
 */
export async function loadSettledPrint(db: Reader, { firstWeek, lastWeek }: RecordSpan): Promise<string> {
  const until = settledUntil(lastWeek);
  const [from, before] = [dayFromNumber(firstDayOf(firstWeek)), dayFromNumber(firstDayOf(until))];
  const retired = sql`coalesce(case when w.retired_on < ${before} then w.retired_on end - ${longAgo}, 0)`;
  const [row] = await db.rows<{ print: string }>(sql`
    with machines as (
      select model_id, sum((hashint8extended(model_id * 1000::bigint + coalesce(made_half, -1),
          hashint8extended((in_service_on - ${longAgo}) * 1000000::bigint + (observed_from - in_service_on), ${retired})) >> 46) * which_units) as print, sum(units) as units
      from unit_windows w where observed_from < ${before} group by 1),
    made as (
      select sum(units) as units, sum(print) as print, sum(hash_record_extended(row(m.*, k.name), 0) >> 24) as models
      from machines join models m using (model_id) join makers k using (maker_id)),
    shown as (
      select unit_id, job_id, sum(hashtextextended(word, 0) >> 24)::bigint as codes from readings where outcome = 'code' group by 1, 2),
    called as (
      select sum(hashint8extended(unit_id, hashint8extended(job_id, hashtextextended(coalesce(component, '-'), hashtextextended(coalesce(symptom, '-'), hashtextextended(counted_as,
          hashint8extended((failed_on - ${longAgo}) * 1000000::bigint + (completed_on - failed_on), coalesce(codes, 0))))))) >> 24) as print, count(*) as jobs
      from jobs left join shown using (unit_id, job_id)
      where counted_as <> 'nothing' and failed_on >= ${from} and failed_on < ${before} and completed_on < ${before}::date + 91)
    select concat_ws(' ', ${version}::text, ${firstWeek}::int, ${until}::int, made.units, made.print, made.models, called.jobs, called.print) as print
    from made, called`);
  if (row === undefined) throw new RangeError("a sum over rows is one row");
  return row.print;
}
