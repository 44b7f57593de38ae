import { is } from "drizzle-orm";
import { getTableConfig, PgTable } from "drizzle-orm/pg-core";
import { expect, test } from "vitest";
import { freeTexts } from "@/db/erasure/free-text";
import * as schema from "@/db/schema/all";

const entries: readonly unknown[] = Object.values(schema);
const tables = entries.flatMap((entry) => (is(entry, PgTable) ? [getTableConfig(entry)] : []));

/**
 * Columns of text, JSON or bytes that hold the program's own words, keys, numbers, hashes, the company's own people, or
 * what is said of parts, models and payers: no customer. Bytes of photos and of what was sent are kept or go as a whole.
 * What is in neither list fails the test below.
 */
const namesNobody: Readonly<Record<string, string>> = {
  api_keys: "key_sha256 made_by name scope",
  attachments: "content media_type received_sha256 stored_sha256 subject",
  batch_changes: "key table_name what",
  batch_made: "table_name",
  batches: "file_sha256 form kind state",
  cell_notes: "column source",
  change_chain: "sha256",
  change_log: "by key row_sha256 table_name what",
  claim_events: "by sent_sha256 what",
  claim_lines: "basis invoice_line invoice_number part_number pay_item",
  claim_submissions: "content content_sha256 manifest way",
  claims: "claim_number currency payer state",
  component_uses: "component product_type",
  components: "key name part_of",
  contracts: "contract_number currency plan",
  credentials: "account_id id password person_id provider_id",
  demand_knowledge: "knowledge",
  demand_totals: "currency data_version key total",
  erasures: "by erased jobs kept prints reason salt",
  expected_ranges: "check_key condition mark source unit",
  file_drafts: "file_sha256 form step",
  found_signals: "lead maker product_type signal_key symptoms within word word_kind",
  hand_edits: "by column_name key table_name",
  held_rows: "state",
  idempotency_keys: "key request_sha256 route state",
  invitations: "email made_by name person_id role technician token_sha256",
  job_cells: "cause component counted_as symptom",
  job_joins: "by",
  jobs: "authorization_number callback_of cause component counted_as currency failure_mode job_number payer status symptom technician",
  makers: "name normalised",
  models: "normalised number product_type",
  open_jobs: "callback_of job_number payer symptom technician",
  own_ranges: "by check_key condition lifted_by mark reason source unit",
  part_fates: "by fate reason tag",
  part_lines: "component currency distributor invoice_line invoice_number part_number role",
  part_order_events: "by what",
  part_orders: "currency description part_key part_number state supplier",
  part_outlooks: "component currency data_version description futures history outlook part_key part_number spellings",
  part_plans: "part_key plan",
  parts: "component currency description maker normalised part_number replaces superseded_by",
  parts_to_forecast: "part_number",
  payer_wordings: "payer reason set_by words",
  people: "email id image name role technician",
  policies: "approved_by document document_sha256 key name published_by retired_by retired_reason source_document",
  policy_drafts: "document saved_by",
  product_types: "key name",
  program_runs: "first problem program",
  readings: "check_key mode outcome own_check point_a point_b power sheet_reference technician unit word",
  recovery_codes: "code_sha256 person_id",
  remembered_matchings: "fingerprint form headers kind matching",
  remembered_words: "column meaning word",
  remittance_lines: "currency decided_by fate reason",
  remittances:
    "columns columns_confirmed_by content currency file_sha256 form header payer received_by reference undone_by",
  removed_attachments: "content removed_by",
  repair_spans: "entered_by",
  repeated_jobs: "cause component counted_as symptom",
  restore_drills: "problem",
  retention_limits: "kind set_by",
  second_factors: "person_id sealed_secret",
  sessions: "id ip_address person_id token user_agent",
  sheet_answers: "answer_id body_sha256",
  sheet_drafts: "document saved_by sheet_key",
  sheet_photos: "check_key content photo_id received_sha256 stored_sha256 subject",
  sheet_runs: "basis sheets versions",
  sheet_versions: "by document reason sheet_key",
  shop: "currency name territory time_zone",
  sign_in_tries: "subject",
  sign_ins: "came_from outcome person_id",
  signal_marks: "by kind signal_key",
  settled_quarter: "content print",
  signal_runs: "basis funnel outcome",
  stock_levels: "part_key place",
  stock_movements: "by job_number kind part_key part_number place",
  stock_parts: "criticality currency lead_days part_key part_number set_by superseded_by supplier",
  suggested_callbacks: "callback_of",
  symptom_uses: "product_type symptom",
  symptoms: "key name",
  technician_asks: "answer asked_by check_key item subject technician",
  technician_notes: "by component lifted_by model_number serial_from serial_to signal_key",
  unclaimed_work: "claim_number component currency leak payer",
  unit_facts: "exchanged_serial",
  units: "in_service_basis serial serial_normalised territory use",
  unplaced_units: "reason",
};

test("every column that could hold a name is known either to name nobody or to be searched when a customer is erased", () => {
  const unknown = tables.flatMap(({ name, columns }) =>
    columns
      .filter((column) => /text|varchar|json|bytea/.test(column.getSQLType()))
      .map((column) => column.name)
      .filter(
        (column) => !freeTexts.some(({ table, columns: searched }) => table === name && searched.includes(column)),
      )
      .filter((column) => !namesNobody[name]?.split(" ").includes(column))
      .map((column) => `${name}.${column}`),
  );
  expect(unknown).toEqual([]);
});

test("no table has a column for a customer's name, birth, payment or address, and the counts hold no text of people", () => {
  const forbidden = /customer|birth|card|iban|phone|e_?mail|address|street|postal|zip|first_name|last_name|surname/;
  const named = tables.flatMap(({ name, columns }) => columns.map((column) => `${name}.${column.name}`));
  const people = /^(?:users|people|sessions|invitations)\./; // of the company's own people, who sign in
  expect(named.filter((column) => forbidden.test(column) && !people.test(column))).toEqual([]);
  const counts = [
    "unit_windows",
    "unplaced_units",
    "job_cells",
    "repeated_jobs",
    "suggested_callbacks",
    "part_outlooks",
    "demand_totals",
  ];
  expect(freeTexts.filter(({ table }) => counts.includes(table))).toEqual([]);
});
