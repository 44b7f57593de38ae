import { type SQL, sql } from "drizzle-orm";
import type { Day } from "@/lib/calendar/day";
import type { Cohort, WeeklyJobs } from "@/lib/signals/signal-record";
import type { Reader } from "../database-types";
import { carriesExposure, fallsIntoExposure, madeHalf, observedUnits, weekNumberOf } from "./signal-units";

/** Days that are read: of service, and of calls. */
export interface RowSpan {
  readonly from: Day;
  readonly asOf: Day;
}

type Placed = { model: number; half: number | null; service: number };
type CohortRow = Placed & { began: number; ended: number | null; units: number };
type JobRow = Placed & {
  failed: number;
  known: number;
  component: string | null;
  symptom: string | null;
  codes: string[] | null;
};

/** Position of each model in the record. */
type Places = ReadonlyMap<number, number>;

export async function loadCohorts(db: Reader, span: RowSpan, place: Places): Promise<Cohort[]> {
  return cohortsOf(await inColumns<CohortRow>(db, cohortColumns, cohortRows(span)), place);
}

export async function loadWeeklyJobs(db: Reader, span: RowSpan, place: Places): Promise<WeeklyJobs[]> {
  return jobsOf(await inColumns<JobRow>(db, jobColumns, jobRows(span)), place);
}

const cohortColumns = ["model", "half", "service", "began", "ended", "units"] as const;
const jobColumns = ["model", "half", "service", "failed", "known", "component", "symptom", "codes"] as const;

/** By column, one entry a row. */
type Columns<Row> = { readonly [key in keyof Row]: readonly Row[key][] };

/** Hundreds of thousands of rows as one row of lists: taken in one by one they cost twice as much. */
async function inColumns<Row extends Record<string, unknown>>(
  db: Reader,
  names: readonly (keyof Row & string)[],
  rows: SQL,
): Promise<Columns<Row>> {
  const lists = names.map((name) => sql.raw(`coalesce(json_agg(${name}), '[]') as ${name}`));
  const [columns] = await db.rows<Columns<Row>>(sql`select ${sql.join(lists, sql`, `)} from (${rows}) r`);
  if (columns === undefined) throw new RangeError("lists of all rows are one row");
  return columns;
}

/** From the roll-up, so that nobody walks through millions of units. A unit that leaves in the week in which it came counts for that week. */
function cohortRows({ from, asOf }: RowSpan): SQL {
  const first = weekNumberOf(sql`${from}::date`);
  return sql`
    select model, half, service, greatest(began, ${first}) as began, ended, sum(units)::int as units
    from (select w.model_id as model, w.made_half as half, ${weekNumberOf(sql`w.in_service_on`)} as service, b.began,
        case when w.retired_on <= ${asOf} then greatest(${weekNumberOf(sql`w.retired_on`)}, b.began + 1) end as ended, w.units
      from unit_windows w cross join lateral (select ${weekNumberOf(sql`w.observed_from`)} as began) b
      where w.observed_from <= ${asOf} and (w.retired_on is null or w.retired_on >= ${from})) w
    where ended is null or ended > ${first}
    group by 1, 2, 3, 4, 5`;
}

function jobRows({ from, asOf }: RowSpan): SQL {
  return sql`
    select u.model_id as model, ${madeHalf} as half, ${weekNumberOf(sql`u.in_service_on`)} as service,
      ${weekNumberOf(sql`j.failed_on`)} as failed, ${weekNumberOf(sql`j.completed_on`)} as known,
      case when j.counted_as = 'failure' then j.component end as component, j.symptom, c.codes
    from ${observedUnits} join jobs j using (unit_id)
    left join (select unit_id, job_id, array_agg(distinct word order by word) as codes from readings
      where outcome = 'code' group by 1, 2) c on c.unit_id = j.unit_id and c.job_id = j.job_id
    where ${carriesExposure} and j.counted_as <> 'nothing' and j.completed_on between ${from} and ${asOf} and j.failed_on between ${from} and ${asOf}
      and ${fallsIntoExposure}`;
}

function cohortsOf({ model, half, service, began, ended, units }: Columns<CohortRow>, place: Places): Cohort[] {
  const cohorts = new Map<number, { cohort: Omit<Cohort, "changes">; changes: Map<number, number> }>();
  units.forEach((count, row) => {
    const [id, madeHalf, inServiceWeek] = [model[row] ?? -1, half[row] ?? undefined, service[row] ?? 0];
    const name = (id * 1000 + (madeHalf ?? -1)) * 10_000 + inServiceWeek; // half-years and weeks since 1970
    const cohort = { model: place.get(id) ?? -1, madeHalf, inServiceWeek };
    const known = cohorts.get(name) ?? { cohort, changes: new Map<number, number>() };
    cohorts.set(name, known);
    const [from, until] = [began[row] ?? 0, ended[row] ?? undefined];
    known.changes.set(from, (known.changes.get(from) ?? 0) + count);
    if (until !== undefined) known.changes.set(until, (known.changes.get(until) ?? 0) - count);
  });
  return [...cohorts.values()].map(({ cohort, changes }) => ({
    ...cohort,
    changes: [...changes].toSorted(([a], [b]) => a - b),
  }));
}

function jobsOf(
  { model, half, service, failed, known, component, symptom, codes }: Columns<JobRow>,
  place: Places,
): WeeklyJobs[] {
  return model.map((id, row) => ({
    model: place.get(id) ?? -1,
    madeHalf: half[row] ?? undefined,
    inServiceWeek: service[row] ?? 0,
    failedWeek: failed[row] ?? 0,
    knownWeek: Math.max(known[row] ?? 0, failed[row] ?? 0),
    failed: component[row] ?? undefined,
    symptom: symptom[row] ?? undefined,
    codes: codes[row] ?? undefined,
    jobs: 1,
  }));
}
