/** How rows of a table are told to belong to the customer's own jobs: SQL with $ids (of jobs) and $numbers (of jobs) for a row t. */
const byJob = "t.job_id = any($ids)";
const byClaim = "t.claim_id in (select c.claim_id from claims c where c.job_id = any($ids))";
const byKey =
  "t.table_name in ('jobs', 'part_lines', 'readings', 'attachments') and split_part(t.key, chr(31), 2) = any($ids::text[])";
const byNumber = "t.job_number = any($numbers)";
const byWord = "exists (select from unnest($numbers) n where strpos(t.cells::text, n) > 0)";

export interface FreeText {
  readonly table: string;
  /** Columns of text or JSON in which somebody may have named a customer. */
  readonly columns: readonly string[];
  readonly own: string;
}

/**
 * Every column in which a customer may be named, since people and files write what they like there. There is no table of
 * customers. A test holds this list against the schema: a new column of text stands here, or among those that name nobody.
 */
export const freeTexts: readonly FreeText[] = [
  { table: "jobs", columns: ["complaint", "cause_note", "correction"], own: byJob },
  { table: "open_jobs", columns: ["complaint"], own: byJob },
  { table: "part_lines", columns: ["description"], own: byJob },
  { table: "readings", columns: ["note"], own: byJob },
  { table: "attachments", columns: ["caption"], own: byJob },
  { table: "removed_attachments", columns: ["attachment"], own: byJob },
  { table: "sheet_answers", columns: ["body"], own: byJob },
  { table: "sheet_photos", columns: ["caption"], own: byJob },
  { table: "technician_asks", columns: ["label", "note"], own: byJob },
  { table: "job_joins", columns: ["reason"], own: byJob },
  { table: "unclaimed_work", columns: ["missing", "reason"], own: byJob },
  {
    table: "missing_lists",
    columns: ["missing"],
    own: "t.missing_key in (select w.missing_key from unclaimed_work w where w.job_id = any($ids))",
  },
  { table: "claims", columns: ["decision", "evidence", "payer_reference"], own: byJob },
  { table: "claim_lines", columns: ["description"], own: byClaim },
  { table: "claim_events", columns: ["act", "note"], own: byClaim },
  { table: "part_fates", columns: ["reason"], own: byClaim },
  { table: "claim_submissions", columns: ["reference", "overrides"], own: byClaim },
  {
    table: "contracts",
    columns: ["holder"],
    own: "t.unit_id in (select j.unit_id from jobs j where j.job_id = any($ids))",
  },
  {
    table: "repair_spans",
    columns: ["source"],
    own: "t.unit_id in (select j.unit_id from jobs j where j.job_id = any($ids))",
  },
  { table: "batches", columns: ["file_name", "matching"], own: "false" },
  { table: "held_rows", columns: ["cells", "source", "problems", "corrections", "reason"], own: byWord },
  { table: "cell_notes", columns: ["raw", "taken", "note"], own: byJob },
  { table: "batch_changes", columns: ["before"], own: byKey },
  { table: "hand_edits", columns: ["value_before", "value", "reason"], own: byKey },
  {
    table: "edit_differences",
    columns: ["file_value"],
    own: `t.edit_id in (select e.edit_id from hand_edits e where ${byKey.replaceAll("t.", "e.")})`,
  },
  { table: "file_drafts", columns: ["file_name", "matching", "look"], own: "false" },
  { table: "idempotency_keys", columns: ["answer"], own: "false" },
  { table: "remittances", columns: ["file_name"], own: "false" },
  { table: "remittance_lines", columns: ["cells", "payer_text", "shares", "match", "sentence"], own: byWord },
  { table: "stock_movements", columns: ["note"], own: byNumber },
  { table: "part_orders", columns: ["note", "why"], own: "false" },
  { table: "part_order_events", columns: ["detail"], own: "false" },
  { table: "signal_marks", columns: ["reason"], own: "false" },
  { table: "technician_notes", columns: ["words"], own: "false" },
];

/** Kept byte for byte under a hash: searched, named in the erasure, and left as they are. */
export const lockedTexts = [
  {
    what: "select 'claim ' || c.claim_number || ', filing ' || s.submission as what, s.content, c.job_id = any($ids) as own from claim_submissions s join claims c using (unit_id, claim_id)",
    why: "What was sent to a payer is kept as it was sent: books and contracts have to be answered for.",
  },
  {
    what: "select 'the payer’s list ' || reference || ' of ' || paid_on as what, content, false as own from remittances",
    why: "A payer’s list is the receipt of money and is kept as it came.",
  },
] as const;
