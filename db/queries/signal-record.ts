import { type SQL, sql } from "drizzle-orm";
import { addDays, type Day } from "@/lib/calendar/day";
import { dayFromNumber, dayNumber } from "@/lib/calendar/day-number";
import type { ProductType } from "@/lib/domain/product-type";
import { reportingDelays } from "@/lib/failures/reporting-delay";
import { knownByWeek } from "@/lib/signals/known-by-week";
import type { Cohort, SignalModel, SignalRecord, WeeklyJobs } from "@/lib/signals/signal-record";
import { firstDayOf, lastDayOf, lastWholeWeek, type WeekNumber, weekOf } from "@/lib/signals/weeks";
import type { Reader } from "../database-types";
import { loadDelayRecord } from "./reporting-delay";
import { carriesExposure, fallsIntoExposure, madeHalf, observedUnits, weekNumberOf } from "./signal-units";

/** Longest record that is looked at: three years of baseline, and five that are followed. */
const mostWeeks = 8 * 52;

export type LoadedRecord =
  | { readonly kind: "record"; readonly record: SignalRecord; readonly asOf: Day }
  | { readonly kind: "before-first-job"; readonly firstOn: Day | undefined };

/**
 * Everything that signals are computed from, as it stood at the end of the last whole week of a day: units that were in
 * service by then, jobs that were closed by then.
 * @param on  no later than today
 */
export async function loadSignalRecord(
  db: Reader,
  { on, timeZone }: { readonly on: Day; readonly timeZone: string },
): Promise<LoadedRecord> {
  const lastWeek = lastWholeWeek(dayNumber(on));
  const asOf = dayFromNumber(lastDayOf(lastWeek));
  const { firstWeek, firstOn } = await firstWeekOf(db, asOf, lastWeek);
  if (firstWeek === undefined || firstWeek > lastWeek) return { kind: "before-first-job", firstOn };
  const models = await loadModels(db);
  const place = new Map(models.map(({ modelId }, index) => [modelId, index]));
  const span = { asOf, from: dayFromNumber(firstDayOf(firstWeek)) };
  const delays = reportingDelays(await loadDelayRecord(db, { today: asOf, timeZone }));
  const closing = delays?.openedToClosed.kind === "learnt" ? delays.openedToClosed.delay : undefined;
  return {
    kind: "record",
    asOf,
    record: {
      firstWeek,
      lastWeek,
      models,
      cohorts: cohortsOf(await db.rows<CohortRow>(cohortRows(span)), place),
      jobs: jobsOf(await db.rows<JobRow>(jobRows(span)), place),
      knownWithin: knownByWeek(closing),
    },
  };
}

/** The first whole week after the company's records begin; where it does not say, after its first job. */
async function firstWeekOf(db: Reader, asOf: Day, lastWeek: WeekNumber) {
  const [row] = await db.rows<{ records: Day | null; first: Day | null }>(sql`
    select (select records_from from shop) as records,
      (select min(failed_on) from job_cells where failed_on <= ${asOf}) as first`);
  const begin = row?.records ?? row?.first ?? undefined;
  const firstOn = row?.first ?? undefined;
  if (begin === undefined || firstOn === undefined) return { firstWeek: undefined, firstOn };
  const whole = weekOf(dayNumber(addDays(begin, 6)));
  return { firstWeek: Math.max(whole, lastWeek - mostWeeks + 1), firstOn };
}

async function loadModels(db: Reader): Promise<SignalModel[]> {
  return await db.rows<{ modelId: number; number: string; maker: string; productType: ProductType }>(sql`
    select m.model_id as "modelId", m.number, k.name as maker, m.product_type as "productType"
    from models m join makers k using (maker_id) order by k.name, m.number`);
}

interface Span {
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
  jobs: number;
};

function cohortRows({ from, asOf }: Span): SQL {
  return sql`
    select u.model_id as model, ${madeHalf} as half, ${weekNumberOf(sql`u.in_service_on`)} as service,
      greatest(${weekNumberOf(sql`o.observed_from`)}, ${weekNumberOf(sql`${from}::date`)}) as began,
      case when u.retired_on <= ${asOf} then ${weekNumberOf(sql`u.retired_on`)} end as ended, count(*)::int as units
    from ${observedUnits}
    where ${carriesExposure} and o.observed_from <= ${asOf} and (u.retired_on is null or u.retired_on >= ${from})
    group by 1, 2, 3, 4, 5`;
}

function jobRows({ from, asOf }: Span): SQL {
  return sql`
    select u.model_id as model, ${madeHalf} as half, ${weekNumberOf(sql`u.in_service_on`)} as service,
      ${weekNumberOf(sql`j.failed_on`)} as failed, ${weekNumberOf(sql`j.completed_on`)} as known,
      case when j.counted_as = 'failure' then j.component end as component, j.symptom, c.codes, count(*)::int as jobs
    from ${observedUnits} join jobs j using (unit_id)
    left join (select unit_id, job_id, array_agg(distinct word order by word) as codes from readings
      where outcome = 'code' group by 1, 2) c on c.unit_id = j.unit_id and c.job_id = j.job_id
    where ${carriesExposure} and j.counted_as <> 'nothing' and j.completed_on <= ${asOf} and j.failed_on between ${from} and ${asOf}
      and ${fallsIntoExposure}
    group by 1, 2, 3, 4, 5, 6, 7, 8`;
}

function cohortsOf(rows: readonly CohortRow[], place: ReadonlyMap<number, number>): Cohort[] {
  const cohorts = new Map<string, { cohort: Omit<Cohort, "changes">; changes: Map<number, number> }>();
  for (const { model, half, service, began, ended, units } of rows) {
    const name = `${model} ${half} ${service}`;
    const cohort = { model: place.get(model) ?? -1, madeHalf: half ?? undefined, inServiceWeek: service };
    const known = cohorts.get(name) ?? { cohort, changes: new Map<number, number>() };
    cohorts.set(name, known);
    known.changes.set(began, (known.changes.get(began) ?? 0) + units);
    // A unit that leaves in the week in which it came counts for that week.
    const end = ended === null ? undefined : Math.max(ended, began + 1);
    if (end !== undefined) known.changes.set(end, (known.changes.get(end) ?? 0) - units);
  }
  return [...cohorts.values()].map(({ cohort, changes }) => ({
    ...cohort,
    changes: [...changes].toSorted(([a], [b]) => a - b),
  }));
}

function jobsOf(rows: readonly JobRow[], place: ReadonlyMap<number, number>): WeeklyJobs[] {
  return rows.map(({ model, half, service, failed, known, component, symptom, codes, jobs }) => ({
    model: place.get(model) ?? -1,
    madeHalf: half ?? undefined,
    inServiceWeek: service,
    failedWeek: failed,
    knownWeek: Math.max(known, failed),
    failed: component ?? undefined,
    symptom: symptom ?? undefined,
    codes: codes ?? undefined,
    jobs,
  }));
}
