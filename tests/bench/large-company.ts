import { Client } from "pg";
import type { Day } from "@/lib/calendar/day";

const models = 500;
const makers = 40;
const components = 60;
const symptoms = 20;
const types = 7;
/** Days for which a model is sold, and days of records. */
const [soldFor, recordDays] = [1092, 8 * 364 + 200];

export interface LargeSize {
  readonly units: number;
  readonly jobs: number;
  /** Last day of the records. */
  readonly until: Day;
}

/**
 * Writes a very large company straight into an empty database: units sold over three years a model, a fifth of them
 * retired; jobs called at any day, closed some days later and loaded week by week; three readings a job, and a fault code
 * in every tenth. Rates differ by component; nothing in it is wrong. Everything follows from a seed.
 * @param url  of the owner of the tables; references are not looked at, which would take most of the time
 */
export async function makeLargeCompany(url: string, { units, jobs, until }: LargeSize): Promise<void> {
  const client = new Client({ connectionString: url });
  await client.connect();
  try {
    for (const statement of statements(units, jobs, until)) await client.query(statement);
  } finally {
    await client.end();
  }
}

/** Calls fall on any unit and day alike, so that every model has the same rate at every age. */
export function statements(units: number, jobs: number, until: Day): string[] {
  const last = `date '${until}'`;
  const first = `(${last} - ${recordDays})`;
  return [
    "set session_replication_role = replica",
    "select setseed(0.5)",
    `insert into shop (name, currency, time_zone, territory, records_from, made_grace_months, demo) values ('Large', 'USD', 'UTC', 'US', ${first}, 3, false)`,
    `insert into makers (name, normalised) select 'Maker ' || i, 'MAKER' || i from generate_series(1, ${makers}) i`,
    `insert into models (maker_id, product_type, number, normalised)
       select 1 + i % ${makers}, (select key from product_types order by key offset i % ${types} limit 1), 'M' || i, 'M' || i from generate_series(1, ${models}) i`,
    `insert into components (key, name) select 'part_' || i, 'Part ' || i from generate_series(0, ${components - 1}) i`,
    `insert into symptoms (key, name) select 'symptom_' || i, 'Symptom ' || i from generate_series(0, ${symptoms - 1}) i`,
    `insert into batches (kind, file_name, file_sha256, file_bytes, state, rows_total, rows_new, rows_changed, rows_same, rows_held, added_at)
       select 'jobs', 'week ' || i, md5(i::text), 1, 'added', 0, 0, 0, 0, 0, ${first} + 7 * i from generate_series(1, ${Math.ceil(recordDays / 7)}) i`,
    `create temp table sold as select model_id, ${first} - 1092 + (random() * ${recordDays + 900})::int as from_on from models`,
    `insert into units (unit_id, maker_id, model_id, serial, serial_normalised, identified, in_register, made_from, made_until, installed_on, retired_on,
         in_service_on, in_service_basis, use, owner_number)
       select i, maker_id, model_id, 'S' || i, 'S' || i, true, true, day - 40, day - 40, day,
         case when random() < 0.2 and day + span < ${last} then day + span end, day, 'installed', 'household', 1
       from (select i, model_id, least(from_on + (random() * ${soldFor})::int, ${last}) as day, 30 + (random() * 2500)::int as span
         from generate_series(1, ${units}) i join sold on model_id = 1 + i % ${models} offset 0) u join models using (model_id)`,
    `insert into jobs (unit_id, job_id, job_number, status, requested_on, completed_on, complaint, cause_note, correction, symptom, component, cause, visits, payer, currency, batch_id)
       select unit_id, i, 'J' || i, 'closed', called, called + wait, 'Does not work as it did before', 'Worn', 'Replaced the part', symptom, component, 'component', 1, 'customer', 'USD',
         1 + least((called + wait - ${first}) / 7, ${Math.ceil(recordDays / 7)} - 1)
       from (select unit_id, i, called, (-6 * ln(1 - random()))::int as wait, 'symptom_' || (random() * ${symptoms - 1})::int as symptom,
           'part_' || floor(${components} * random() ^ 2)::int as component
         from (select i, 1 + floor(random() * ${units})::int as unit_id, ${first} + floor(random() * ${recordDays})::int as called
           from generate_series(1, ${Math.ceil(2.4 * jobs)}) i offset 0) j join units using (unit_id)
         where called >= in_service_on and (retired_on is null or called <= retired_on) limit ${jobs} offset 0) c where called + wait <= ${last}`,
    `insert into readings (unit_id, job_id, number, check_key, mode, outcome, value, unit, power)
       select unit_id, job_id, n, 'supply', 'volts', 'number', 120, 'V', 'live' from jobs, generate_series(1, 3) n`,
    `insert into readings (unit_id, job_id, number, check_key, mode, outcome, word, power)
       select unit_id, job_id, 4, 'code', 'fault_code', 'code', 'E' || (random() * 9)::int, 'live' from jobs where random() < 0.1`,
    "analyze",
  ];
}
