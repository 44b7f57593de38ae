import { sql } from "drizzle-orm";
import { addDays, type Day } from "@/lib/calendar/day";
import { dayFromNumber, dayNumber } from "@/lib/calendar/day-number";
import type { ProductType } from "@/lib/domain/product-type";
import { reportingDelays } from "@/lib/failures/reporting-delay";
import { knownByWeek } from "@/lib/signals/known-by-week";
import type { SignalModel, SignalRecord } from "@/lib/signals/signal-record";
import { firstDayOf, lastDayOf, lastWholeWeek, oldestWeek, type WeekNumber, weekOf } from "@/lib/signals/weeks";
import type { Reader } from "../database-types";
import { loadDelayRecord } from "./reporting-delay";
import { loadCohorts, loadWeeklyJobs } from "./signal-rows";

export type LoadedRecord =
  | { readonly kind: "record"; readonly record: SignalRecord; readonly asOf: Day }
  | { readonly kind: "before-first-job"; readonly firstOn: Day | undefined };

export interface AskedRecord {
  /** No later than today. */
  readonly on: Day;
  readonly timeZone: string;
}

/**
 * Everything that signals are computed from, as it stood at the end of the last whole week of a day: units that were in
 * service by then, jobs that were closed by then.
 */
export async function loadSignalRecord(db: Reader, asked: AskedRecord): Promise<LoadedRecord> {
  const span = await spanOf(db, asked.on);
  if (span.kind === "before-first-job") return span;
  return { kind: "record", asOf: span.asOf, record: await loadWeeks(db, span, asked.timeZone) };
}

export type RecordSpan = { readonly kind: "span"; readonly asOf: Day } & Pick<SignalRecord, "firstWeek" | "lastWeek">;

/** Weeks that a record would hold, before it is read. */
export async function spanOf(
  db: Reader,
  on: Day,
): Promise<RecordSpan | Extract<LoadedRecord, { kind: "before-first-job" }>> {
  const lastWeek = lastWholeWeek(dayNumber(on));
  const asOf = dayFromNumber(lastDayOf(lastWeek));
  const { firstWeek, firstOn } = await firstWeekOf(db, asOf, lastWeek);
  if (firstWeek === undefined || firstWeek > lastWeek) return { kind: "before-first-job", firstOn };
  return { kind: "span", asOf, firstWeek, lastWeek };
}

/** The weeks of a span: units that were in service in them, and calls of them that are closed. */
export async function loadWeeks(
  db: Reader,
  { asOf, firstWeek, lastWeek }: Omit<RecordSpan, "kind">,
  timeZone: string,
): Promise<SignalRecord> {
  const models = await loadModels(db);
  const place = new Map(models.map(({ modelId }, index) => [modelId, index]));
  const span = { asOf, from: dayFromNumber(firstDayOf(firstWeek)) };
  const delays = reportingDelays(await loadDelayRecord(db, { today: asOf, timeZone }));
  const closing = delays?.openedToClosed.kind === "learnt" ? delays.openedToClosed.delay : undefined;
  return {
    firstWeek,
    lastWeek,
    models,
    cohorts: await loadCohorts(db, span, place),
    jobs: await loadWeeklyJobs(db, span, place),
    knownWithin: knownByWeek(closing),
  };
}

/** The first whole week after the company's records begin; where it does not say, after its first job. */
async function firstWeekOf(db: Reader, asOf: Day, lastWeek: WeekNumber) {
  const [row] = await db.rows<{ records: Day | null; any: boolean }>(sql`
    select (select records_from from shop) as records, exists (select from job_cells where failed_on <= ${asOf}) as any`);
  // Looked for among all rows, so only where it is wanted.
  const firstOn = row?.any === true && row.records !== null ? undefined : await firstFailure(db, asOf);
  const begin = row?.any === true ? (row.records ?? firstOn) : undefined;
  if (begin === undefined) return { firstWeek: undefined, firstOn };
  const whole = weekOf(dayNumber(addDays(begin, 6)));
  return { firstWeek: Math.max(whole, oldestWeek(lastWeek)), firstOn };
}

async function firstFailure(db: Reader, asOf: Day): Promise<Day | undefined> {
  const [row] = await db.rows<{ first: Day | null }>(
    sql`select min(failed_on) as first from job_cells where failed_on <= ${asOf}`,
  );
  return row?.first ?? undefined;
}

async function loadModels(db: Reader): Promise<SignalModel[]> {
  return await db.rows<{ modelId: number; number: string; maker: string; productType: ProductType }>(sql`
    select m.model_id as "modelId", m.number, k.name as maker, m.product_type as "productType"
    from models m join makers k using (maker_id) order by k.name, m.number`);
}
