// Lives and histories cut unit by unit from the rows of units and jobs: shares no code with counts, cells or lib/failures.
import { sql } from "drizzle-orm";
import type { Reader } from "@/db/database-types";
import type { UnitHistory } from "@/lib/statistics/recurrence/unit-history";
import type { LifeRow } from "@/lib/statistics/survival/life-rows";

export interface RawUnit {
  readonly maker: string;
  readonly model: string;
  readonly type: string;
  readonly begun: number;
  /** First day on which a failure would have been on record. */
  readonly watched: number;
  readonly retired: number | undefined;
  /** By day. */
  readonly failures: readonly {
    readonly component: string;
    readonly symptom: string | undefined;
    readonly on: number;
  }[];
}

export interface RawCompany {
  readonly units: readonly RawUnit[];
  readonly typesOfComponent: ReadonlyMap<string, ReadonlySet<string>>;
  readonly typesOfSymptom: ReadonlyMap<string, ReadonlySet<string>>;
}

/** What is asked of the company, in days since 1970: `from` up to but not including `until`. */
export interface RawQuestion {
  readonly component: string;
  readonly from?: number;
  readonly until: number;
  readonly where: {
    readonly maker?: string;
    readonly model?: string;
    readonly type?: string;
    readonly symptom?: string;
  };
}

export async function rawCompany(db: Reader): Promise<RawCompany> {
  const jobs = await db.rows<{ id: string; component: string; symptom: string | null; on: number }>(sql`
    select unit_id::text as id, component, symptom,
      coalesce(requested_on, first_visit_on, completed_on) - date '1970-01-01' as on
    from jobs where status = 'closed' and cause = 'component' and component is not null`);
  const byUnit = new Map<string, RawUnit["failures"][number][]>();
  for (const { id, component, symptom, on } of jobs) {
    const own = byUnit.get(id) ?? [];
    byUnit.set(id, own);
    own.push({ component, symptom: symptom ?? undefined, on });
  }
  const units = await db.rows<{
    id: string;
    maker: string;
    model: string;
    type: string;
    begun: number;
    watched: number;
    retired: number | null;
  }>(sql`
    select u.unit_id::text as id, k.name as maker, m.number as model, m.product_type as type,
      u.in_service_on - date '1970-01-01' as begun,
      greatest(u.in_service_on, u.recorded_from, s.records_from) - date '1970-01-01' as watched,
      u.retired_on - date '1970-01-01' as retired
    from units u join models m using (model_id) join makers k on k.maker_id = m.maker_id cross join shop s
    where u.in_register and u.in_service_on is not null`);
  return {
    units: units
      .filter(({ watched, retired }) => retired === null || retired >= watched)
      .map(({ id, retired, ...unit }) => ({
        ...unit,
        retired: retired ?? undefined,
        failures: (byUnit.get(id) ?? []).toSorted((a, b) => a.on - b.on),
      })),
    typesOfComponent: await typesOf(db, "component"),
    typesOfSymptom: await typesOf(db, "symptom"),
  };
}

async function typesOf(db: Reader, kind: "component" | "symptom"): Promise<Map<string, Set<string>>> {
  const rows = await db.rows<{ word: string; type: string }>(
    sql`select ${sql.raw(kind)} as word, product_type as type from ${sql.raw(`${kind}_uses`)}`,
  );
  const found = new Map<string, Set<string>>();
  for (const { word, type } of rows) found.set(word, (found.get(word) ?? new Set()).add(type));
  return found;
}

export function rawFleet({ units, typesOfComponent, typesOfSymptom }: RawCompany, question: RawQuestion): RawUnit[] {
  const { maker, model, type, symptom } = question.where;
  return units.filter(
    (unit) =>
      (maker === undefined || unit.maker === maker) &&
      (model === undefined || unit.model === model) &&
      (type === undefined || unit.type === type) &&
      typesOfComponent.get(question.component)?.has(unit.type) === true &&
      (symptom === undefined || typesOfSymptom.get(symptom)?.has(unit.type) === true),
  );
}

/** One row for every life of the component; a failure with another symptom ends a life without being the event asked for. */
export function rawLives(unit: RawUnit, { component, from, until, where }: RawQuestion): LifeRow[] {
  const opens = Math.max(unit.watched, from ?? unit.watched);
  const closes = Math.min(unit.retired ?? until, until);
  const known = unit.failures.filter(
    ({ component: what, on }) => what === component && on >= unit.watched && on < until && on <= (unit.retired ?? on),
  );
  const rows: LifeRow[] = [];
  let begun = unit.begun;
  for (const failure of [...known, undefined]) {
    const ended = failure?.on ?? closes;
    const event = failure !== undefined && (where.symptom === undefined || failure.symptom === where.symptom);
    if (ended >= opens && (ended > begun || (event && ended === begun))) {
      rows.push({ entry: opens > begun ? opens - begun - 0.5 : 0, exit: ended - begun, event, count: 1 });
    }
    begun = ended;
  }
  return rows;
}

/** The failures asked for by age of the unit; empty for a unit that was not watched. */
export function rawHistory(unit: RawUnit, question: RawQuestion): UnitHistory[] {
  const { component, from, until, where } = question;
  const opens = Math.max(unit.watched, from ?? unit.watched);
  const closes = Math.min(unit.retired ?? until, until);
  if (closes < opens) return [];
  const events = unit.failures
    .filter(({ component: what, symptom }) => what === component && symptom === (where.symptom ?? symptom))
    .filter(({ on }) => on >= opens && on < until && on <= (unit.retired ?? on))
    .map(({ on }) => ({ age: on - unit.begun, size: 1 }));
  return [{ entry: opens > unit.begun ? opens - unit.begun - 0.5 : 0, exit: closes - unit.begun, count: 1, events }];
}
