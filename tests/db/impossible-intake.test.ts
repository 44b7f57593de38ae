import { sql } from "drizzle-orm";
import { afterAll, beforeAll, expect, test } from "vitest";
import { closeDatabase } from "@/db/close-database";
import { inTransaction } from "@/db/in-transaction";
import { csv, fileFolder, job, shopDocument, startAfresh, unit } from "./intake-files";

const files = fileFolder();

const hash = "0".repeat(64);
const draft = "00000000-0000-4000-8000-000000000001";
const edit = "insert into hand_edits (table_name, key, column_name, value, at, by, reason)";

/** One valid row in each table that its statement needs. */
const valid: readonly string[] = [
  `${edit} values ('jobs', 'k', 'correction', '1', now(), 'Office', 'Heard by phone')`,
  `insert into file_drafts (draft_id, file_name, file_bytes, file_sha256, step, created_at, updated_at) values ('${draft}', 'x.csv', 1, '${hash}', 'look', now(), now())`,
  `insert into api_keys (name, scope, key_sha256, created_at) values ('a program', 'jobs', '${hash}', now())`,
  `insert into idempotency_keys (route, key, request_sha256, state, run, run_until, expires_at) values ('/api/jobs', 'k', '${hash}', 'running', '${draft}', now(), now())`,
  `insert into contracts (unit_id, contract_number, starts_on, ends_on, wait_days, currency) select unit_id, 'C1', '2024-01-01', '2024-12-31', 0, 'USD' from units limit 1`,
  `insert into parts (part_id, effective_on, maker, part_number, normalised, description, currency) values (1, '2024-01-01', '', 'P-1', 'P1', '', 'USD')`,
  `insert into job_joins (job_id, from_unit_id, to_unit_id, batch_id, at) select 1, 2, 3, min(batch_id), now() from batches`,
  `insert into held_rows (batch_id, row, cells, problems) select min(batch_id), 2, '{}', '[]' from batches`,
  `insert into cell_notes (batch_id, row, place, source, "column", raw, taken, note) select min(batch_id), 2, 1, 'a', 'b', 'c', 'd', 'e' from batches`,
];

beforeAll(async () => {
  await startAfresh();
  await files.load(JSON.stringify(shopDocument));
  await files.load(csv([unit("A1")]));
  await files.load(csv([job("J1", "A1"), job("J2", "A1", { requested_on: "2023-05-10", completed_on: "2023-05-11" })]));
  await inTransaction(async (tx) => {
    for (const statement of valid) await tx.execute(sql.raw(statement));
  });
});
afterAll(async () => {
  files.remove();
  await closeDatabase();
});

// What the database itself refuses of files, edits, joins and requests, whoever writes to it.
test.each([
  [`${edit} values ('jobs', 'k', 'correction', '2', now(), 'Desk', 'Again')`, "hand_edits_one_holds_a_field"],
  [
    "insert into edit_differences (batch_id, row, edit_id, file_value) select min(batch_id), 2, 999999, null from batches",
    "edit_differences_of_an_edit",
  ],
  [
    "insert into edit_differences (batch_id, row, edit_id, file_value) select 999999, 2, min(edit_id), null from hand_edits",
    "edit_differences_batch_id_batches_batch_id_fk",
  ],
  ["update job_joins set to_unit_id = from_unit_id", "job_joins_move"],
  ["update job_joins set batch_id = null", "job_joins_by_batch_or_hand"],
  ["update job_joins set by = 'Office'", "job_joins_by_batch_or_hand"],
  [
    "insert into job_joins (job_id, from_unit_id, to_unit_id, batch_id, at) select job_id, 4, 5, batch_id, at from job_joins",
    "job_joins_once_a_batch",
  ],
  ["update file_drafts set step = 'add'", "file_drafts_known_step"],
  ["update file_drafts set file_sha256 = 'x'", "file_drafts_hashed"],
  ["update idempotency_keys set state = 'done'", "idempotency_keys_done_has_answer"],
  ["update idempotency_keys set status = 200, answer = '{}'", "idempotency_keys_done_has_answer"],
  ["update idempotency_keys set state = 'lost'", "idempotency_keys_known_state"],
  ["insert into idempotency_keys select * from idempotency_keys", "idempotency_keys_route_key_pk"],
  ["update api_keys set scope = 'all'", "api_keys_known_scope"],
  ["update api_keys set key_sha256 = 'the key itself'", "api_keys_hashed"],
  [
    "insert into api_keys (name, scope, key_sha256, created_at) select name, scope, key_sha256, created_at from api_keys",
    "api_keys_one_hash",
  ],
  ["update parts set superseded_by = part_number", "parts_superseded_by_another"],
  ["update parts set cost_cents = -1", "parts_prices_not_negative"],
  ["update parts set component = 'flux_valve'", "parts_component_components_key_fk"],
  ["insert into parts select * from parts", "parts_part_id_effective_on_pk"],
  ["update contracts set ends_on = '2023-12-31'", "contracts_in_order"],
  ["update contracts set sold_on = '2025-01-01'", "contracts_in_order"],
  ["update contracts set wait_days = -1", "contracts_not_negative"],
  ["update contracts set limit_cents = -1", "contracts_not_negative"],
  ["update contracts set unit_id = 1", "contracts_unit_id_units_unit_id_fk"],
  ["update suggested_callbacks set days = -1", "suggested_callbacks_later"],
  ["update suggested_callbacks set model_id = 999999", "suggested_callbacks_model_id_models_model_id_fk"],
  ["insert into suggested_callbacks select * from suggested_callbacks", "suggested_callbacks_unit_id_job_id_pk"],
  ["update held_rows set state = 'gone'", "held_rows_known_state"],
  ["update held_rows set state = 'refused'", "held_rows_reason_where_due"],
  ["update held_rows set state = 'mended'", "held_rows_mended_by_a_batch"],
  ["update held_rows set mended_by = batch_id", "held_rows_mended_by_a_batch"],
  ["update batches set parent_batch = 999999", "batches_mend_a_batch"],
  ["update batches set rows_refused = 1", "batches_rows_add_up"],
  ["insert into cell_notes select * from cell_notes", "cell_notes_batch_id_row_place_pk"],
  ["update shop set repeat_days = -1", "shop_repeat_days_not_negative"],
])("%s breaks %s", async (statement, constraint) => {
  const tried = inTransaction(async (tx) => void (await tx.execute(sql.raw(statement))));
  await expect(tried).rejects.toThrow(expect.objectContaining({ cause: expect.objectContaining({ constraint }) }));
});
