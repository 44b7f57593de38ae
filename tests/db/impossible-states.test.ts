import { sql } from "drizzle-orm";
import { afterAll, beforeAll, expect, test } from "vitest";
import { closeDatabase } from "@/db/close-database";
import { inTransaction } from "@/db/in-transaction";
import { csv, fileFolder, job, partLine, shopDocument, startAfresh, unit } from "./intake-files";

const files = fileFolder();

beforeAll(async () => {
  await startAfresh();
  await files.load(JSON.stringify(shopDocument));
  await files.load(csv([unit("A1", { retired_on: "2024-01-01" })]));
  await files.load(csv([job("J1", "A1")]));
  await files.load(csv([partLine("J1", 1)]));
});
afterAll(async () => {
  files.remove();
  await closeDatabase();
});

// What the database itself refuses, whoever writes to it: the name is that of the constraint.
test.each([
  ["update units set retired_on = '2020-01-01'", "units_retire_after_service"],
  ["update units set sold_on = '2010-01-01'", "units_made_before_sale"],
  ["update units set in_service_on = null", "units_service_has_basis"],
  ["update units set identified = false, serial_normalised = null", "units_placeholder_not_in_register"],
  ["update units set owner_number = 0", "units_owner_counts_from_one"],
  ["update jobs set completed_on = '2020-01-01'", "jobs_complete_after_request"],
  ["update jobs set status = 'lost'", "jobs_known_status"],
  ["update jobs set labour_cents = -1", "jobs_labour_not_negative"],
  ["update jobs set callback_of = job_number", "jobs_callback_of_another"],
  ["update jobs set component = 'flux_valve'", "jobs_component_components_key_fk"],
  ["update part_lines set job_id = 1", "part_lines_of_a_job"],
  ["insert into part_lines select * from part_lines", "part_lines_unit_id_job_id_line_pk"],
  ["delete from units", "jobs_unit_id_units_unit_id_fk"],
  ["delete from jobs", "part_lines_of_a_job"],
  ["update part_lines set quantity = 0", "part_lines_some_quantity"],
  ["update part_lines set unit_cost_cents = -1", "part_lines_cost_not_negative"],
  ["update batches set rows_new = rows_new + 1", "batches_rows_add_up"],
  ["update batches set state = 'taken_back'", "batches_taken_back_has_time"],
  ["update shop set made_grace_months = -1", "shop_grace_not_negative"],
  [
    "insert into shop select false, name, currency, time_zone, territory, records_from, made_grace_months, demo from shop",
    "shop_only_one",
  ],
  ["update unit_windows set units = 0", "unit_windows_some"],
  ["update unit_windows set observed_from = '2000-01-01'", "unit_windows_observed_in_service"],
])("%s breaks %s", async (statement, constraint) => {
  const tried = inTransaction(async (tx) => void (await tx.execute(sql.raw(statement))));
  await expect(tried).rejects.toThrow(expect.objectContaining({ cause: expect.objectContaining({ constraint }) }));
});
