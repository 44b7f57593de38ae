import { type SQL, sql } from "drizzle-orm";
import type { Day } from "@/lib/calendar/day";
import { type Leak, unfiledLeaks } from "@/lib/claims/leaks/leak";
import type { Currency } from "@/lib/domain/money";
import type { Reader } from "../database-types";

/** As people see it: work whose filing day has passed is late, however it was missed. */
export type LeakClass = Leak | "late";

export interface UnclaimedFilter {
  readonly leak: LeakClass | undefined;
  readonly payer: string | undefined;
  readonly component: string | undefined;
  /** Days left, at most. */
  readonly within: number | undefined;
  readonly from: Day | undefined;
  readonly to: Day | undefined;
}

export interface LeakTotal {
  readonly leak: LeakClass;
  readonly currency: Currency;
  readonly rows: number;
  readonly cents: number;
  readonly missing: number;
}

export interface UnclaimedListRow {
  readonly unitId: string;
  readonly jobNumber: string;
  readonly serial: string | undefined;
  readonly policyKey: string;
  readonly leak: LeakClass;
  /** How it was lost, where it is late now. */
  readonly lostAs: Leak;
  readonly claimNumber: string | undefined;
  readonly payer: string;
  readonly component: string | undefined;
  readonly completedOn: Day;
  readonly dueOn: Day | undefined;
  readonly currency: Currency;
  readonly cents: Readonly<Record<"parts" | "labour" | "trip" | "diagnosis" | "handling" | "all", number>>;
  readonly missing: readonly string[];
  readonly reason: string;
}

export interface UnclaimedFacts {
  readonly totals: readonly LeakTotal[];
  readonly payers: readonly string[];
  readonly components: readonly string[];
  /** Units that a load changed and that are still to be judged anew. */
  readonly unitsToJudge: number | "all";
}

/** Sums of every class over the whole history, whatever the filter. */
export async function loadUnclaimedFacts(db: Reader, today: Day): Promise<UnclaimedFacts> {
  const sums = await db.rows<SumRow>(sql`
    select ${classOf(today)} as leak, currency, payer, component, count(*)::int as rows, sum(amount_cents)::text as cents,
      count(*) filter (where missing <> '[]')::int as missing from unclaimed_work w group by 1, 2, 3, 4`);
  const [waiting] = await db.rows<{ units: number; all: boolean }>(
    sql`select (select count(*)::int from units_to_judge) as units, exists (select from all_to_judge) as "all"`,
  );
  const sorted = (values: readonly (string | null)[]) =>
    [...new Set(values.filter((value) => value !== null))].sort((a, b) => a.localeCompare(b, "en"));
  return {
    totals: totalsOf(sums),
    payers: sorted(sums.map(({ payer }) => payer)),
    components: sorted(sums.map(({ component }) => component)),
    unitsToJudge: waiting?.all === true ? "all" : (waiting?.units ?? 0),
  };
}

type SumRow = Omit<LeakTotal, "cents"> & {
  readonly cents: string;
  readonly payer: string;
  readonly component: string | null;
};

/** Over all payers and components; one pass of the database tells these and their names. */
function totalsOf(sums: readonly SumRow[]): readonly LeakTotal[] {
  const totals = new Map<string, LeakTotal>();
  for (const { leak, currency, rows, cents, missing } of sums) {
    const of = totals.get(`${leak} ${currency}`) ?? { leak, currency, rows: 0, cents: 0, missing: 0 };
    const [all, added] = [of.rows + rows, of.cents + Number(cents)];
    totals.set(`${leak} ${currency}`, { leak, currency, rows: all, cents: added, missing: of.missing + missing });
  }
  return [...totals.values()];
}

export interface UnclaimedList {
  readonly rows: readonly UnclaimedListRow[];
  readonly total: number;
}

/** Those that can still be saved first, the most urgent on top; then those without a clock; then those that are late. */
export async function loadUnclaimedList(
  db: Reader,
  filter: UnclaimedFilter,
  today: Day,
  { offset, limit }: { readonly offset: number; readonly limit: number | undefined },
): Promise<UnclaimedList> {
  const which = conditions(filter, today);
  const [count] = await db.rows<{ total: number; toCome: number }>(sql`
    select count(*)::int as total, count(*) filter (where w.due_on >= ${today})::int as "toCome" from unclaimed_work w where ${which}`);
  const days = sql`(w.due_on < ${today}) is true, w.due_on nulls last, w.completed_on desc`;
  const order = sql`${days}, j.job_number`;
  // Which rows stand on the page is settled first, over narrow rows, and by their days before any job is looked up; all that
  // is said of them comes only to those.
  const isToCome = limit !== undefined && offset + limit <= (count?.toCome ?? 0); // most of it has gone by, and need not be sorted
  const upToPage = limit === undefined ? sql`` : sql`fetch first (${offset + limit}::integer) rows with ties`;
  const rows = await db.rows<Row>(sql`
    with near as materialized (
      select unit_id, job_id, w.policy_id, w.leak, w.due_on, w.completed_on from unclaimed_work w
      where ${which} ${isToCome ? sql`and w.due_on >= ${today}` : sql``} order by ${days} ${upToPage}),
    shown as materialized (
      select unit_id, job_id, w.policy_id, w.leak from near w join jobs j using (unit_id, job_id)
      order by ${order} ${limit === undefined ? sql`` : sql`limit ${limit} offset ${offset}`})
    select w.*, coalesce(l.missing, w.missing) as lacking, w.unit_id::text as unit_id, j.job_number, u.serial, p.key as policy_key, ${classOf(today)} as class,
      w.completed_on::text as completed_on, w.due_on::text as due_on
    from shown join unclaimed_work w using (unit_id, job_id, policy_id, leak) left join missing_lists l using (missing_key)
    join jobs j using (unit_id, job_id) join units u using (unit_id) join policies p using (policy_id) order by ${order}`);
  return { rows: rows.map(listRow), total: count?.total ?? 0 };
}

function conditions({ leak, payer, component, within, from, to }: UnclaimedFilter, today: Day): SQL {
  const asked = [
    leak && sql`${classOf(today)} = ${leak}`,
    payer && sql`w.payer = ${payer}`,
    component && sql`w.component = ${component}`,
    within !== undefined && sql`w.due_on between ${today}::date and ${today}::date + ${within}::integer`,
    from && sql`w.completed_on >= ${from}`,
    to && sql`w.completed_on <= ${to}`,
  ].filter((each) => each !== undefined && each !== false && each !== "");
  return asked.length === 0 ? sql`true` : sql.join(asked, sql` and `);
}

/** Only what was never filed turns late; a claim whose correction is overdue stays what it is. */
function classOf(today: Day): SQL {
  return sql`case when w.leak = any(${sql.param([...unfiledLeaks])}::text[]) and w.due_on < ${today}::date then 'late' else w.leak end`;
}

type Row = {
  unit_id: string;
  job_number: string;
  serial: string | null;
  policy_key: string;
  class: LeakClass;
  leak: Leak;
  claim_number: string | null;
  payer: string;
  component: string | null;
  completed_on: Day;
  due_on: Day | null;
  currency: Currency;
  parts_cents: string;
  labour_cents: string;
  trip_cents: string;
  diagnosis_cents: string;
  handling_cents: string;
  amount_cents: string;
  lacking: readonly string[];
  reason: string;
};

function listRow(row: Row): UnclaimedListRow {
  return {
    unitId: row.unit_id,
    jobNumber: row.job_number,
    serial: row.serial ?? undefined,
    policyKey: row.policy_key,
    leak: row.class,
    lostAs: row.leak,
    claimNumber: row.claim_number ?? undefined,
    payer: row.payer,
    component: row.component ?? undefined,
    completedOn: row.completed_on,
    dueOn: row.due_on ?? undefined,
    currency: row.currency,
    cents: {
      parts: Number(row.parts_cents),
      labour: Number(row.labour_cents),
      trip: Number(row.trip_cents),
      diagnosis: Number(row.diagnosis_cents),
      handling: Number(row.handling_cents),
      all: Number(row.amount_cents),
    },
    missing: row.lacking,
    reason: row.reason,
  };
}
