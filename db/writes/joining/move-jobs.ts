import type { Transaction } from "@/db/database-types";
import { keySeparator } from "../staging/merge-staged";
import { rowsOf, run } from "../staging/run";

/** Tables under a job, those that others hang on first. What hangs on a claim has the claim's key. */
const underJob = [
  "jobs",
  "part_lines",
  "readings",
  "attachments",
  "claims",
  "open_jobs",
  "sheet_photos",
  "sheet_runs",
  "sheet_answers",
  "technician_asks",
] as const;
const underClaim = ["claim_lines", "claim_submissions", "claim_events", "part_fates"] as const;

/** Keys of the tables whose rows have a history. */
const keys: Readonly<Record<string, readonly string[]>> = {
  jobs: ["job_id"],
  part_lines: ["job_id", "line"],
  readings: ["job_id", "number"],
  attachments: ["job_id", "attachment_id"],
};

/**
 * Moves jobs with everything under them, and with their history, to other units. A unit's key begins every key, so
 * rows are made anew and the old ones removed. `moves` is a table of `job_id, from_unit, to_unit`.
 */
export async function moveJobs(tx: Transaction, moves: string): Promise<void> {
  const columns = await storedColumns(tx);
  for (const table of underJob)
    await copyRows(tx, table, columns, `join ${moves} m on m.job_id = t.job_id and m.from_unit = t.unit_id`);
  const ofClaim = `join claims c on c.claim_id = t.claim_id and c.unit_id = t.unit_id join ${moves} m on m.job_id = c.job_id and m.from_unit = t.unit_id`;
  for (const table of underClaim) await copyRows(tx, table, columns, ofClaim);
  for (const [table, key] of Object.entries(keys)) await moveHistory(tx, moves, { table, key });
  for (const table of underClaim.toReversed())
    await run(
      tx,
      `delete from ${table} t using claims c, ${moves} m where c.claim_id = t.claim_id and c.unit_id = t.unit_id and m.job_id = c.job_id and m.from_unit = t.unit_id`,
    );
  for (const table of underJob.toReversed())
    await run(tx, `delete from ${table} t using ${moves} m where m.job_id = t.job_id and m.from_unit = t.unit_id`);
}

type Columns = ReadonlyMap<string, readonly string[]>;

async function storedColumns(tx: Transaction): Promise<Columns> {
  const found = await rowsOf<{ table: string; columns: string[] }>(
    tx,
    `select table_name as table, array_agg(column_name::text order by ordinal_position) as columns from information_schema.columns
     where to_regclass(quote_ident(table_name)) = to_regclass(quote_ident(table_schema) || '.' || quote_ident(table_name)) and is_generated = 'NEVER' group by 1`,
  );
  return new Map(found.map(({ table, columns }) => [table, columns]));
}

async function copyRows(tx: Transaction, table: string, columns: Columns, join: string): Promise<void> {
  const names = columns.get(table) ?? [];
  const values = names.map((name) => (name === "unit_id" ? "m.to_unit" : `t."${name}"`));
  await run(
    tx,
    `insert into ${table} (${names.map((name) => `"${name}"`).join(", ")}) select ${values.join(", ")} from ${table} t ${join}`,
  );
}

/** What loads did to a row, and what was edited in it, follows the row. */
async function moveHistory(
  tx: Transaction,
  moves: string,
  { table, key }: { table: string; key: readonly string[] },
): Promise<void> {
  const keyAt = (unit: string) =>
    [unit, ...key.map((column) => `t.${column}`)].map((part) => `${part}::text`).join(` || ${keySeparator} || `);
  for (const history of ["batch_changes", "hand_edits"])
    await run(
      tx,
      `update ${history} x set key = ${keyAt("m.to_unit")} from ${table} t join ${moves} m on m.job_id = t.job_id and m.from_unit = t.unit_id
       where x.table_name = '${table}' and x.key = ${keyAt("m.from_unit")}`,
    );
}
