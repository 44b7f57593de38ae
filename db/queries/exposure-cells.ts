import { type SQL, sql } from "drizzle-orm";
import type { Cause } from "@/lib/domain/cause";
import type { PayerKind } from "@/lib/domain/job";
import type { ProductType } from "@/lib/domain/product-type";
import type { CountedWord, ExposureCells, JobCell, JobPlace, RepeatedJob, UnitWindow } from "@/lib/failures/cells";
import type { Reader } from "../database-types";
import { placedUnits } from "../placed-units";

/** Which models to read; component, symptom, age and period are narrowed afterwards, in lib/failures. */
export interface ModelFilter {
  readonly maker?: string | undefined;
  readonly model?: string | undefined;
  readonly productType?: string | undefined;
  /** Read only the models whose type has one of these components, and their own jobs: enough for all that is asked of them alone. */
  readonly onlyComponents?: readonly string[] | undefined;
  /** Read the jobs themselves, with who paid, which the roll-ups do not hold: the only question whose cost grows with jobs. */
  readonly withPayer?: boolean | undefined;
}

/** The counts from which rates and curves are computed: the roll-ups only, never units or jobs row by row. */
export async function loadExposureCells(db: Reader, filter: ModelFilter): Promise<ExposureCells> {
  const chosen = modelsWhere(filter);
  const models = await db.rows<ModelRow>(sql`
    select m.model_id, m.number, k.name as maker, m.product_type
    from models m join makers k using (maker_id) where ${chosen} order by k.name, m.number`);
  const windows = await db.rows<WindowRow>(sql`
    select w.model_id, ${days("w")}, w.units from unit_windows w
    join models m using (model_id) join makers k using (maker_id) where ${chosen}`);
  const jobs = await db.rows<CellRow>(
    filter.withPayer === true
      ? cellsByPayer(filter)
      : sql`
    select c.model_id, c.component, c.symptom, c.cause, c.counted_as, ${days("c")},
      c.failed_on - date '1970-01-01' as failed, c.previous_failed_on - date '1970-01-01' as previous, c.jobs
    from job_cells c join models m using (model_id) join makers k using (maker_id) where ${chosen} and ${ofComponent("c", filter)}`,
  );
  const repeated = await db.rows<RepeatRow>(sql`
    select r.unit_id, r.model_id, r.component, r.symptom, r.cause, r.counted_as, ${days("r")},
      r.failed_on - date '1970-01-01' as failed ${filter.withPayer === true ? sql`, j.payer` : sql``}
    from repeated_jobs r ${filter.withPayer === true ? sql`join jobs j using (unit_id, job_id)` : sql``} join models m using (model_id) join makers k using (maker_id) where ${chosen} and ${ofComponent("r", filter)}`);
  const unplaced = await db.rows<UnplacedRow>(sql`
    select u.model_id, u.reason, u.units from unplaced_units u
    join models m using (model_id) join makers k using (maker_id) where ${chosen}`);
  return {
    models: models.map((row) => ({
      modelId: row.model_id,
      number: row.number,
      maker: row.maker,
      productType: row.product_type,
    })),
    components: await loadWords(db, "component"),
    symptoms: await loadWords(db, "symptom"),
    windows: windows.map(windowOf),
    jobs: jobs.map(cellOf),
    repeated: repeated.map(repeatOf),
    unplaced: unplaced.map((row) => ({ modelId: row.model_id, reason: row.reason, units: row.units })),
  };
}

type ModelRow = { model_id: number; number: string; maker: string; product_type: ProductType };
type DayRow = { in_service: number | null; observed: number | null; retired: number | null };
type WindowRow = DayRow & { model_id: number; units: number };
type JobRow = DayRow & {
  model_id: number;
  component: string | null;
  symptom: string | null;
  cause: Cause;
  counted_as: "failure" | "call";
  failed: number;
  payer?: PayerKind;
};
type CellRow = JobRow & { previous: number | null; jobs: number };
type RepeatRow = JobRow & { unit_id: string };
type UnplacedRow = { model_id: number; reason: ExposureCells["unplaced"][number]["reason"]; units: number };

/** As the roll-up of jobs counts them (refresh-counts.ts), and by payer; the previous failure is left out, which rates do not need. */
function cellsByPayer(filter: ModelFilter): SQL {
  return sql`
    select p.model_id, j.component, j.symptom, j.cause, j.counted_as, j.payer,
      case when p.reason is null then p.in_service_on - date '1970-01-01' end as in_service, p.observed_from - date '1970-01-01' as observed,
      case when p.reason is null then p.retired_on - date '1970-01-01' end as retired,
      j.failed_on - date '1970-01-01' as failed, null::int as previous, count(*)::int as jobs
    from ${sql.raw(placedUnits("true"))} p join jobs j using (unit_id) join models m using (model_id) join makers k using (maker_id)
    where j.counted_as <> 'nothing' and ${modelsWhere(filter)} and ${ofComponent("j", filter)}
    group by 1, 2, 3, 4, 5, 6, 7, 8, 9, 10`;
}

/** Days as whole numbers since 1970, the form that lib/failures adds up. */
function days(alias: "w" | "c" | "r"): SQL {
  const at = sql.raw(alias);
  return sql`${at}.in_service_on - date '1970-01-01' as in_service, ${at}.observed_from - date '1970-01-01' as observed,
    ${at}.retired_on - date '1970-01-01' as retired`;
}

function ofComponent(alias: "c" | "r" | "j", { onlyComponents }: ModelFilter): SQL {
  const at = sql.raw(alias);
  return onlyComponents === undefined ? sql`true` : sql`${at}.component = any (${textArray(onlyComponents)})`;
}

function modelsWhere({ maker, model, productType, onlyComponents }: ModelFilter): SQL {
  const parts = [sql`true`];
  if (maker !== undefined) parts.push(sql`k.name = ${maker}`);
  if (model !== undefined) parts.push(sql`m.number = ${model}`);
  if (productType !== undefined) parts.push(sql`m.product_type = ${productType}`);
  if (onlyComponents !== undefined)
    parts.push(
      sql`m.product_type in (select u.product_type from component_uses u where u.component = any (${textArray(onlyComponents)}))`,
    );
  return sql.join(parts, sql` and `);
}

function textArray(words: readonly string[]): SQL {
  return sql`array[${sql.join(
    words.map((word) => sql`${word}`),
    sql`, `,
  )}]::text[]`;
}

async function loadWords(db: Reader, kind: "component" | "symptom"): Promise<CountedWord[]> {
  const table = sql.raw(kind === "component" ? "components" : "symptoms");
  const uses = sql.raw(kind === "component" ? "component_uses" : "symptom_uses");
  return await db.rows<{ key: string; name: string; productTypes: ProductType[] }>(sql`
    select w.key, w.name, array_remove(array_agg(u.product_type order by u.product_type), null)::text[] as "productTypes"
    from ${table} w left join ${uses} u on u.${sql.raw(kind)} = w.key group by w.key, w.name order by w.name, w.key`);
}

function placeOf(row: DayRow): JobPlace | undefined {
  if (row.in_service === null || row.observed === null) return undefined;
  return { inServiceOn: row.in_service, observedFrom: row.observed, retiredOn: row.retired ?? undefined };
}

function windowOf(row: WindowRow): UnitWindow {
  const { inServiceOn, observedFrom, retiredOn } = placedAlways(row);
  return { modelId: row.model_id, units: row.units, inServiceOn, observedFrom, retiredOn };
}

function cellOf(row: CellRow): JobCell {
  return {
    modelId: row.model_id,
    component: row.component ?? undefined,
    symptom: row.symptom ?? undefined,
    cause: row.cause,
    countedAs: row.counted_as,
    place: placeOf(row),
    failedOn: row.failed,
    previousFailedOn: row.previous ?? undefined,
    jobs: row.jobs,
    payer: row.payer,
  };
}

/** Each property by name: objects that are spread from others are of the slow kind, and a large company has a hundred thousand. */
function repeatOf(row: RepeatRow): RepeatedJob {
  return {
    modelId: row.model_id,
    component: row.component ?? undefined,
    symptom: row.symptom ?? undefined,
    cause: row.cause,
    countedAs: row.counted_as,
    place: placedAlways(row),
    failedOn: row.failed,
    payer: row.payer,
    unitId: row.unit_id,
  };
}

/** The schema allows no null in these columns of these two tables. */
function placedAlways(row: DayRow): JobPlace {
  const place = placeOf(row);
  if (place === undefined) throw new RangeError("a counts row without its days: the schema forbids it");
  return place;
}
