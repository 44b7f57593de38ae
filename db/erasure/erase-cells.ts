import { type SQL, sql } from "drizzle-orm";
import type { Transaction } from "../database-types";
import type { ErasedJob } from "../schema/keeping";
import { type FreeText, freeTexts, lockedTexts } from "./free-text";
import type { Eraser } from "./word-prints";

const atOnce = 2000;

export interface ErasedPlace {
  /** Table and column. */
  readonly place: string;
  readonly cells: number;
}

/** Erases in every column in which a customer may be named. @returns where, and in how many cells */
export async function eraseCells(
  tx: Transaction,
  eraser: Eraser,
  jobs: readonly ErasedJob[],
): Promise<readonly ErasedPlace[]> {
  const counts = new Map<string, number>();
  for (const text of freeTexts) {
    await eachRow(tx, text, jobs, async ({ ctid, own, row }) => {
      const changed = changedColumns(eraser, text, own, row);
      for (const [column] of changed) {
        const place = `${text.table}.${column}`;
        counts.set(place, (counts.get(place) ?? 0) + 1);
      }
      if (changed.length > 0) await update(tx, text.table, ctid, Object.fromEntries(changed));
    });
  }
  return [...counts].map(([place, cells]) => ({ place, cells }));
}

/** What names the customer and is kept all the same, with the reason. */
export async function findLocked(tx: Transaction, eraser: Eraser, jobs: readonly ErasedJob[]) {
  const kept: { what: string; why: string }[] = [];
  for (const { what: query, why } of lockedTexts) {
    const rows = await tx.rows<{ what: string; content: Buffer; own: boolean }>(withJobs(query, jobs));
    for (const { what, content, own } of rows) {
      const text = content.toString("utf8");
      if (eraser.erase(text, own) !== text) kept.push({ what, why });
    }
  }
  return kept;
}

interface ScannedRow extends Record<string, unknown> {
  readonly ctid: string;
  readonly own: boolean;
  readonly row: Readonly<Record<string, unknown>>;
}

/** In pieces through a cursor: a table may be larger than memory. */
async function eachRow(
  tx: Transaction,
  { table, columns, own }: FreeText,
  jobs: readonly ErasedJob[],
  work: (row: ScannedRow) => Promise<void>,
): Promise<void> {
  const listed = columns.map((column) => `'${column}', t.${column}`).join(", ");
  const some = columns.map((column) => `t.${column} is not null and t.${column}::text <> ''`).join(" or ");
  const query = `select t.ctid::text as ctid, coalesce(${own}, false) as own, jsonb_build_object(${listed}) as row from ${table} t where ${some}`;
  await tx.execute(sql`declare erased_rows no scroll cursor for ${withJobs(query, jobs)}`);
  for (let more = true; more; ) {
    const rows = await tx.rows<ScannedRow>(sql.raw(`fetch ${atOnce} from erased_rows`));
    for (const row of rows) await work(row);
    more = rows.length === atOnce;
  }
  await tx.execute(sql`close erased_rows`);
}

function changedColumns(eraser: Eraser, { columns }: FreeText, own: boolean, row: Readonly<Record<string, unknown>>) {
  return columns.flatMap((column) => {
    const before = row[column];
    const after = eraser.eraseJson(before, own);
    return JSON.stringify(after) === JSON.stringify(before) ? [] : [[column, after] as const];
  });
}

async function update(tx: Transaction, table: string, ctid: string, values: Readonly<Record<string, unknown>>) {
  const named = sql.identifier(table);
  const set = sql.join(
    Object.keys(values).map((column) => sql`${sql.identifier(column)} = v.${sql.identifier(column)}`),
    sql`, `,
  );
  await tx.execute(sql`
    update ${named} t set ${set} from jsonb_populate_record(null::${named}, ${JSON.stringify(values)}::jsonb) v where t.ctid = ${ctid}::tid`);
}

/** Cursors take no parameters, so the numbers stand in the text: keys are digits, and job numbers are quoted. */
function withJobs(query: string, jobs: readonly ErasedJob[]): SQL {
  const ids = `'{${jobs.map(({ jobId }) => BigInt(jobId)).join(",")}}'::bigint[]`;
  const numbers = `array[${jobs.map(({ jobNumber }) => `'${jobNumber.replaceAll("'", "''")}'`).join(",")}]::text[]`;
  return sql.raw(query.replaceAll("$ids", () => ids).replaceAll("$numbers", () => numbers));
}
