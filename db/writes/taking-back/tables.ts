/** A table whose rows a batch can make or change. */
export interface TakenTable {
  readonly name: string;
  /** What people call its rows. */
  readonly noun: string;
  readonly key: readonly {
    readonly column: string;
    readonly type: "bigint" | "integer" | "text" | "boolean" | "date";
  }[];
  /** Columns that a batch can change, which a before-image brings back. */
  readonly restored: readonly string[];
  /** SQL for what names row `t` to people. */
  readonly label: string;
  /** SQL that is true where a claim stands on row `t`. */
  readonly claimed: string;
  /** SQL that is true where rows that stay hang on row `t`. `stays` tells of a row of another table whether it does. */
  readonly inUse: string;
}

const unitId = { column: "unit_id", type: "bigint" } as const;
const jobId = { column: "job_id", type: "bigint" } as const;
const claimOnJob = "exists (select from claims c where c.unit_id = t.unit_id and c.job_id = t.job_id)";
const jobNumber = "(select j.job_number from jobs j where j.unit_id = t.unit_id and j.job_id = t.job_id)";

/** SQL: some row of `table` with this condition is not among those that go. */
function someStays(table: string, alias: string, key: readonly string[], condition: string): string {
  const text = key.map((column) => `${alias}.${column}::text`).join(" || chr(31) || ");
  return `exists (select from ${table} ${alias} where ${condition} and not exists
    (select from taking g where g.table_name = '${table}' and g.key = ${text} and g.verdict = 'remove'))`;
}

const ofJob = (alias: string) => `${alias}.unit_id = t.unit_id and ${alias}.job_id = t.job_id`;
const ofComponent = (alias: string) => `${alias}.component = t.key`;

/** Those that hang on others come first, so that whether something is still in use is known when its turn comes. */
export const takenTables: readonly TakenTable[] = [
  {
    name: "attachments",
    noun: "photo",
    key: [unitId, jobId, { column: "attachment_id", type: "bigint" }],
    restored: ["subject", "caption", "taken_at"],
    label: `'job ' || ${jobNumber} || ', ' || t.subject`,
    claimed: claimOnJob,
    inUse: "false",
  },
  {
    name: "readings",
    noun: "reading",
    key: [unitId, jobId, { column: "number", type: "integer" }],
    restored: words(
      "check_key point_a point_b mode outcome value unit word power isolated load_connected commanded temperature_c sheet_low sheet_high sheet_reference note technician taken_at",
    ),
    label: `'job ' || ${jobNumber} || ', reading ' || t.number`,
    claimed: claimOnJob,
    inUse: "false",
  },
  {
    name: "part_lines",
    noun: "part line",
    key: [unitId, jobId, { column: "line", type: "integer" }],
    restored: words(
      "part_number description component role quantity unit_cost_cents currency distributor invoice_number invoice_line invoiced_on",
    ),
    label: `'job ' || ${jobNumber} || ', line ' || t.line`,
    claimed: claimOnJob,
    inUse: "false",
  },
  {
    name: "jobs",
    noun: "job",
    key: [unitId, jobId],
    restored: words(
      "status requested_on first_visit_on diagnosed_on parts_ordered_on parts_received_on completed_on invoiced_on complaint cause_note correction symptom component failure_mode cause visits technician payer labour_minutes labour_cents trip_cents trip_miles currency authorization_number authorized_on callback_of",
    ),
    label: "'job ' || t.job_number",
    claimed: claimOnJob,
    inUse: [
      someStays("attachments", "a", ["unit_id", "job_id", "attachment_id"], ofJob("a")),
      someStays("readings", "r", ["unit_id", "job_id", "number"], ofJob("r")),
      someStays("part_lines", "p", ["unit_id", "job_id", "line"], ofJob("p")),
    ].join(" or "),
  },
  {
    name: "contracts",
    noun: "contract",
    key: [unitId, { column: "contract_number", type: "text" }],
    restored: words(
      "plan sold_on starts_on ends_on cancelled_on wait_days deductible_cents limit_cents currency holder",
    ),
    label: "'contract ' || t.contract_number",
    claimed: "false",
    inUse: "false",
  },
  {
    name: "unit_facts",
    noun: "fact of a unit",
    key: [unitId],
    restored: words("first_used_on acquired_on transfer_registered_on exchanged_on exchanged_serial serial_removed"),
    label:
      "(select coalesce('serial ' || u.serial, 'a unit without a serial') from units u where u.unit_id = t.unit_id)",
    claimed: "false",
    inUse: "false",
  },
  {
    name: "units",
    noun: "unit",
    key: [unitId],
    restored: words(
      "model_id in_register made_from made_until shipped_on sold_on delivered_on installed_on occupied_on registered_on retired_on recorded_from in_service_on in_service_basis use territory owner_number",
    ),
    label: "coalesce('serial ' || t.serial, 'a unit without a serial')",
    claimed: "exists (select from claims c where c.unit_id = t.unit_id)",
    inUse: [
      someStays("jobs", "j", ["unit_id", "job_id"], "j.unit_id = t.unit_id"),
      someStays("contracts", "c", ["unit_id", "contract_number"], "c.unit_id = t.unit_id"),
      someStays("unit_facts", "f", ["unit_id"], "f.unit_id = t.unit_id"),
      "exists (select from repair_spans r where r.unit_id = t.unit_id)",
    ].join(" or "),
  },
  {
    name: "parts",
    noun: "part",
    key: [
      { column: "part_id", type: "bigint" },
      { column: "effective_on", type: "date" },
    ],
    restored: words("description component replaces superseded_by list_cents cost_cents currency"),
    label: "'part ' || t.part_number",
    claimed: "false",
    inUse: "false",
  },
  {
    name: "expected_ranges",
    noun: "range",
    key: [
      { column: "model_id", type: "integer" },
      { column: "check_key", type: "text" },
      { column: "condition", type: "text" },
    ],
    restored: words("low high unit source mark"),
    label: "(select m.number from models m where m.model_id = t.model_id) || ', ' || t.check_key",
    claimed: "false",
    inUse: "false",
  },
  {
    name: "component_uses",
    noun: "use of a component",
    key: [
      { column: "component", type: "text" },
      { column: "product_type", type: "text" },
    ],
    restored: [],
    label: "t.component || ' in ' || t.product_type",
    claimed: "false",
    inUse: "false",
  },
  {
    name: "components",
    noun: "component",
    key: [{ column: "key", type: "text" }],
    restored: ["name", "part_of"],
    label: "t.name",
    claimed: "false",
    inUse: [
      someStays("jobs", "j", ["unit_id", "job_id"], ofComponent("j")),
      someStays("part_lines", "p", ["unit_id", "job_id", "line"], ofComponent("p")),
      someStays("parts", "q", ["part_id", "effective_on"], ofComponent("q")),
      someStays("component_uses", "w", ["component", "product_type"], ofComponent("w")),
    ].join(" or "),
  },
  {
    name: "policies",
    noun: "policy version",
    key: [
      { column: "key", type: "text" },
      { column: "version", type: "integer" },
    ],
    restored: [],
    label: "t.name || ', version ' || t.version",
    claimed: "exists (select from claims c where c.policy_id = t.policy_id)",
    inUse: "false",
  },
  {
    name: "shop",
    noun: "company",
    key: [{ column: '"only"', type: "boolean" }],
    restored: words("name currency time_zone territory records_from made_grace_months repeat_days demo"),
    label: "t.name",
    claimed: "false",
    inUse: "exists (select from units)",
  },
];

function words(text: string): readonly string[] {
  return text.split(" ");
}
