/** Everything that belongs to one unit lies on one machine: its tables are spread by this column and joined by it. */
export const spreadBy = "unit_id";

/** Spread over the machines, in the order in which they refer to each other. */
export const spreadTables = [
  "units",
  "unit_facts",
  "repair_spans",
  "contracts",
  "jobs",
  "part_lines",
  "readings",
  "attachments",
  "removed_attachments",
  "open_jobs",
  "sheet_runs",
  "sheet_answers",
  "sheet_photos",
  "technician_asks",
  "claims",
  "claim_lines",
  "claim_submissions",
  "claim_events",
  "part_fates",
  "remittance_postings",
  "unclaimed_work",
  "repeated_jobs",
  "suggested_callbacks",
] as const;

/** Small, and needed beside every unit: a copy on each machine. */
export const copiedTables = [
  "product_types",
  "makers",
  "models",
  "components",
  "component_uses",
  "symptoms",
  "symptom_uses",
  "policies",
  "remittances",
  "remittance_lines",
  "missing_lists",
] as const;

// All others stay on the machine that is asked: counts, files, people, the change log, queues and whatever takes locks.
