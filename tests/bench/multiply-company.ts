import { sql } from "drizzle-orm";
import type { Transaction } from "@/db/database-types";
import { inTransaction } from "@/db/in-transaction";

/** A key for copy `k` of what `column` names, of 63 bits like every key. */
const copied = (column: string) =>
  `(('x' || left(md5(${column}::text || '/' || k), 16))::bit(64)::bigint & 9223372036854775807)`;
const unitId = copied("unit_id");
const jobId = copied("job_id");

/** What differs in a copy; every other column is as it was, the serial too, so that campaigns still name it. */
const tables = {
  units: { unit_id: unitId },
  contracts: { unit_id: unitId },
  jobs: {
    unit_id: unitId,
    job_id: jobId,
    job_number: "job_number || '/' || k",
    callback_of: "callback_of || '/' || k",
  },
  part_lines: { unit_id: unitId, job_id: jobId },
  readings: { unit_id: unitId, job_id: jobId },
  attachments: { unit_id: unitId, job_id: jobId, content: "'\\x00'::bytea", stored_bytes: "1" },
} as const;

/** Makes a company of the invented one's kind that has at least `jobs` jobs, by copying units with all that is under them. */
export async function multiplyCompany(jobs: number): Promise<void> {
  await inTransaction(
    async (tx) => {
      const [found] = await tx.rows<{ jobs: number }>(sql`select count(*)::int as jobs from jobs`);
      const copies = Math.ceil(jobs / Math.max(1, found?.jobs ?? 0)) - 1;
      if (copies < 1) return;
      for (const [table, changed] of Object.entries(tables)) await copyRows(tx, table, changed, copies);
    },
    { timeoutSeconds: 3600 },
  );
  await inTransaction(async (tx) => void (await tx.execute(sql.raw("analyze"))), { timeoutSeconds: 600 });
}

async function copyRows(
  tx: Transaction,
  table: string,
  changed: Readonly<Record<string, string>>,
  copies: number,
): Promise<void> {
  const columns = await tx.rows<{ name: string }>(sql`
    select column_name as name from information_schema.columns
    where table_schema = current_schema() and table_name = ${table} and is_generated = 'NEVER' order by ordinal_position`);
  const names = columns.map(({ name }) => name);
  const values = names.map((name) => changed[name] ?? name);
  await tx.execute(
    sql.raw(`
      insert into ${table} (${names.join(", ")})
      select ${values.join(", ")} from ${table}, generate_series(1, ${copies}) k order by 1`),
  );
}
