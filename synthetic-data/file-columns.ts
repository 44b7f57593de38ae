// Column names of the intake files, in the order in which the demo writes them.

export const unitColumns = [
  "maker",
  "model",
  "product_type",
  "serial",
  "made",
  "shipped_on",
  "sold_on",
  "delivered_on",
  "installed_on",
  "occupied_on",
  "registered_on",
  "retired_on",
  "recorded_from",
  "use",
  "territory",
  "owner_number",
] as const;
export type UnitColumn = (typeof unitColumns)[number];

export const jobColumns = [
  "job_number",
  "status",
  "maker",
  "model",
  "product_type",
  "serial",
  "requested_on",
  "first_visit_on",
  "diagnosed_on",
  "parts_ordered_on",
  "parts_received_on",
  "completed_on",
  "invoiced_on",
  "complaint",
  "cause_note",
  "correction",
  "symptom",
  "component",
  "failure_mode",
  "cause",
  "visits",
  "technician",
  "payer",
  "labour_minutes",
  "labour",
  "trip",
  "trip_miles",
  "authorization_number",
  "authorized_on",
  "callback_of",
] as const;
export type JobColumn = (typeof jobColumns)[number];

export const partLineColumns = [
  "job_number",
  "line",
  "part_number",
  "description",
  "component",
  "role",
  "quantity",
  "unit_cost",
  "distributor",
  "invoice_number",
  "invoice_line",
  "invoiced_on",
] as const;
export type PartLineColumn = (typeof partLineColumns)[number];

export const readingColumns = [
  "job_number",
  "number",
  "check",
  "point_a",
  "point_b",
  "mode",
  "outcome",
  "value",
  "unit",
  "word",
  "power",
  "isolated",
  "load_connected",
  "commanded",
  "temperature_c",
  "sheet_low",
  "sheet_high",
  "sheet_reference",
  "note",
  "technician",
  "taken_at",
] as const;
export type ReadingColumn = (typeof readingColumns)[number];

export const rangeColumns = ["maker", "model", "check", "low", "high", "unit", "condition", "source", "mark"] as const;
export type RangeColumn = (typeof rangeColumns)[number];

export const photoColumns = ["job_number", "subject", "file", "caption", "taken_at"] as const;
export type PhotoColumn = (typeof photoColumns)[number];

export const contractColumns = [
  "contract_number",
  "maker",
  "serial",
  "plan",
  "sold_on",
  "starts_on",
  "ends_on",
  "cancelled_on",
  "wait_days",
  "deductible",
  "limit",
  "holder",
] as const;
export type ContractColumn = (typeof contractColumns)[number];

export type Cells<Column extends string> = Partial<Record<Column, string | number | undefined>>;
