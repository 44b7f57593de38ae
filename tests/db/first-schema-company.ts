// A company of any size in the schema of the first release, made by the database itself in seconds.
import type { Client } from "pg";

/** Units, as many jobs, two part lines and four readings each; every row follows from its number alone. */
export async function fillFirstSchema(client: Client, jobs: number): Promise<void> {
  await client.query(`
    insert into product_types values ('front_load_washer', 'Front-load washer');
    insert into components values ('drain_pump', 'Drain pump', null, null);
    insert into symptoms values ('will_not_drain', 'Will not drain');
    insert into makers (name, normalised) values ('Hearth-Wick', 'HEARTH-WICK');
    insert into models (maker_id, product_type, number, normalised) select maker_id, 'front_load_washer', 'FW' || n, 'FW' || n from makers, generate_series(1, 40) n;
    insert into shop values (true, 'Test Appliance Service', 'USD', 'America/Los_Angeles', 'US-CA', '2020-01-01', 3, true, null)`);
  await client.query(
    `insert into units (unit_id, maker_id, model_id, serial, serial_normalised, identified, in_register, in_service_on, in_service_basis, use, owner_number)
     select n, maker_id, 1 + n % 40, 'S' || n, 'S' || n, true, true, date '2020-01-01' + n % 1500, 'installed', 'household', 1 from makers, generate_series(1, $1::integer) n`,
    [jobs],
  );
  await client.query(
    `insert into jobs (unit_id, job_id, job_number, status, requested_on, completed_on, complaint, cause_note, correction, symptom, component, cause, visits, payer, currency)
     select n, n, 'J' || n, 'closed', date '2022-01-01' + n % 1500, date '2022-01-03' + n % 1500, 'It hums.', '', 'Pump replaced.', 'will_not_drain', 'drain_pump', 'component', 1, 'customer', 'USD'
     from generate_series(1, $1::integer) n`,
    [jobs],
  );
  await client.query(
    `insert into part_lines (unit_id, job_id, line, part_number, description, component, role, quantity, unit_cost_cents, currency)
     select n, n, line, 'P-' || n % 300, 'Pump', 'drain_pump', 'failed', 1, 4150, 'USD' from generate_series(1, $1::integer) n, generate_series(1, 2) line`,
    [jobs],
  );
  await client.query(
    `insert into readings (unit_id, job_id, number, check_key, mode, outcome, value, unit, power)
     select n, n, number, 'drain_pump_winding', 'ohms', 'number', 12 + n % 7, 'Ω', 'off' from generate_series(1, $1::integer) n, generate_series(1, 4) number`,
    [jobs],
  );
  await client.query(`
    insert into policies (key, maker_id, name, version, effective_from, document, document_sha256, source_document, approved_by, published_at)
    select 'p', maker_id, 'Limited', 1, '2020-01-01', '{}', repeat('a', 64), 'Paper', 'Kim', now() from makers`);
  await client.query("analyze");
}

/** One more job, as the first release stores it. */
export const oldInsert = `
  insert into jobs (unit_id, job_id, job_number, status, requested_on, completed_on, complaint, cause_note, correction, symptom, component, cause, visits, payer, currency)
  values (1 + $1::bigint % 100, 1000000000 + $1::bigint, 'L' || $1::bigint, 'closed', '2026-01-01', '2026-01-02', '', '', '', 'will_not_drain', 'drain_pump', 'component', 1, 'customer', 'USD')`;

/** What a page of the first release reads. */
export const oldRead = `
  select m.number, count(*)::integer as jobs, min(j.completed_on) as first from jobs j join units u using (unit_id) join models m using (model_id)
  where j.component = 'drain_pump' and j.completed_on >= '2026-01-01' group by 1`;
