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

/** Units with a serial, those with the latest job first. @param words part of serial or model */
export async function loadUnitList(
  db: Reader,
  words: string | undefined,
  page: { readonly offset: number; readonly limit: number },
) {
  const where = unitsWhere(words);
  const [count] = await db.rows<{ total: number }>(sql`
    select count(*)::int as total from units u join models m using (model_id) where ${where}`);
  // Which units stand on the page is settled first, over narrow rows; names come only to those.
  const rows = await db.rows<Row>(sql`
    select u.unit_id, u.serial, k.name as maker, m.number as model, m.product_type, u.in_service_on::text, u.retired_on::text, u.in_register,
      shown.jobs, shown.last_job_on::text
    from (
      select u.unit_id, coalesce(j.jobs, 0) as jobs, j.last_job_on
      from units u join models m using (model_id)
      left join (select unit_id, count(*)::int as jobs, max(completed_on) as last_job_on from jobs where status = 'closed' group by unit_id) j
        on j.unit_id = u.unit_id
      where ${where} order by j.last_job_on desc nulls last, u.serial limit ${page.limit} offset ${page.offset}) shown
    join units u using (unit_id) join models m using (model_id) join makers k on k.maker_id = m.maker_id
    order by shown.last_job_on desc nulls last, u.serial`);
  return { total: count?.total ?? 0, rows: rows.map(listRow) };
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

function unitsWhere(words: string | undefined): SQL {
  if (words === undefined) return sql`u.identified`;
  const like = `%${words.replaceAll(/[\\%_]/g, (match) => `\\${match}`)}%`;
  return sql`u.identified and (u.serial ilike ${like} or m.number ilike ${like})`;
}
