import { type SQL, sql } from "drizzle-orm";
import type { Day } from "@/lib/calendar/day";
import type { ProductType } from "@/lib/domain/product-type";
import type { Reader } from "../database-types";

export interface UnitListRow {
  readonly unitId: string;
  readonly serial: string;
  readonly maker: string;
  readonly model: string;
  readonly productType: ProductType;
  readonly inServiceOn: Day | undefined;
  readonly retiredOn: Day | undefined;
  readonly inRegister: boolean;
  readonly jobs: number;
  readonly lastJobOn: Day | undefined;
}

interface UnitPage {
  readonly offset: number;
  readonly limit: number;
  /** How many there are without any words, where that is known. */
  readonly allUnits?: number;
}

/** Units with a serial, those with the latest job first. @param words part of serial or model */
export async function loadUnitList(db: Reader, words: string | undefined, page: UnitPage) {
  const total = (words === undefined ? page.allUnits : undefined) ?? (await countOf(db, words));
  const shown = (words === undefined ? await latestUnits(db, page) : undefined) ?? (await chosenUnits(db, words, page));
  // Which units stand on the page is settled first, over narrow rows; names and counts come only to those.
  const rows = await db.rows<Row>(sql`
    select u.unit_id, u.serial, k.name as maker, m.number as model, m.product_type, u.in_service_on::text, u.retired_on::text, u.in_register,
      j.jobs, j.last_job_on::text
    from units u join models m using (model_id) join makers k on k.maker_id = m.maker_id,
      lateral (select count(*)::int as jobs, max(completed_on) as last_job_on from jobs where unit_id = u.unit_id and status = 'closed') j
    where u.unit_id = any(${sql.param([...shown])}::bigint[])
    order by j.last_job_on desc nulls last, u.serial`);
  return { total, rows: rows.map(listRow) };
}

async function countOf(db: Reader, words: string | undefined): Promise<number> {
  const [count] = await db.rows<{ total: number }>(
    sql`select count(*)::int as total from units u ${ofModel(words)} where ${unitsWhere(words)}`,
  );
  return count?.total ?? 0;
}

/**
 * The same from the latest jobs alone, so that the first pages of a large company do not ask for the last job of every unit.
 * All jobs of the earliest day among them are there, so that every unit of a later or equal last day is.
 * @returns undefined where these jobs are of too few units
 */
async function latestUnits(
  db: Reader,
  { offset, limit }: { readonly offset: number; readonly limit: number },
): Promise<readonly string[] | undefined> {
  const wanted = offset + limit;
  if (wanted > mostByLatestJobs) return undefined;
  const rows = await db.rows<{ unit_id: string }>(sql`
    select u.unit_id from (
      select unit_id, max(completed_on) as last_job_on from (
        select unit_id, completed_on from jobs where status = 'closed'
        order by completed_on desc fetch first (${3 * wanted + 100}::integer) rows with ties) latest
      group by unit_id) j join units u using (unit_id)
    where u.identified order by j.last_job_on desc, u.serial limit ${limit} offset ${offset}`);
  return rows.length === limit ? rows.map((row) => row.unit_id) : undefined;
}

/** Own choice: beyond twenty pages of fifty all units are sorted. */
const mostByLatestJobs = 1000;

async function chosenUnits(
  db: Reader,
  words: string | undefined,
  { offset, limit }: { readonly offset: number; readonly limit: number },
): Promise<readonly string[]> {
  const rows = await db.rows<{ unit_id: string }>(sql`
    select u.unit_id from units u ${ofModel(words)}
      left join (select unit_id, max(completed_on) as last_job_on from jobs where status = 'closed' group by unit_id) j on j.unit_id = u.unit_id
    where ${unitsWhere(words)} order by j.last_job_on desc nulls last, u.serial limit ${limit} offset ${offset}`);
  return rows.map((row) => row.unit_id);
}

/** Serials that look like this one once the letters that people confuse with digits are made alike (0/O, 1/I, 5/S, 8/B). */
export async function loadLookAlikes(db: Reader, serial: string): Promise<UnitListRow[]> {
  const alike = await db.rows<Row>(sql`
    select u.unit_id, u.serial, k.name as maker, m.number as model, m.product_type, u.in_service_on::text, u.retired_on::text, u.in_register,
      0 as jobs, null as last_job_on
    from units u join models m using (model_id) join makers k on k.maker_id = m.maker_id
    where translate(u.serial_normalised, 'OISB', '0158') = translate(upper(regexp_replace(${serial}, '[^A-Za-z0-9]', '', 'g')), 'OISB', '0158') limit 5`);
  return alike.map(listRow);
}

type Row = {
  unit_id: string;
  serial: string;
  maker: string;
  model: string;
  product_type: ProductType;
  in_service_on: Day | null;
  retired_on: Day | null;
  in_register: boolean;
  jobs: number;
  last_job_on: Day | null;
};

function listRow(row: Row): UnitListRow {
  return {
    unitId: row.unit_id,
    serial: row.serial,
    maker: row.maker,
    model: row.model,
    productType: row.product_type,
    inServiceOn: row.in_service_on ?? undefined,
    retiredOn: row.retired_on ?? undefined,
    inRegister: row.in_register,
    jobs: row.jobs,
    lastJobOn: row.last_job_on ?? undefined,
  };
}

/** A unit always has its model; its number is only looked at for words. */
const ofModel = (words: string | undefined) => (words === undefined ? sql`` : sql`join models m using (model_id)`);

function unitsWhere(words: string | undefined): SQL {
  if (words === undefined) return sql`u.identified`;
  const like = `%${words.replaceAll(/[\\%_]/g, (match) => `\\${match}`)}%`;
  return sql`u.identified and (u.serial ilike ${like} or m.number ilike ${like})`;
}
