// Which rows a batch made, kept in few rows of arrays: an entry for each would cost as much as the rows themselves.
import type { Transaction } from "@/db/database-types";
import { rowsOf, run } from "../staging/run";

/** Tables whose keys are numbers. The makings of other tables, which are few, stand in batch_changes. */
const numbered: ReadonlySet<string> = new Set(["units", "jobs", "part_lines", "readings", "attachments"]);

export function isNumbered(table: string): boolean {
  return numbered.has(table);
}

const keysInARow = 8192;

interface Rows {
  readonly table: string;
  readonly key: readonly string[];
  /** SQL that gives their key columns and `row`, which only parts them. */
  readonly from: string;
  readonly batchId: number;
}

/** Notes rows as made by the batch. */
export async function noteMade(tx: Transaction, rows: Rows): Promise<void> {
  await note(tx, rows, rows.table);
}

/** Notes that rows of the batch hang on these stored ones, so that taking back whoever made those leaves them. */
export async function noteUsedRows(tx: Transaction, rows: Rows): Promise<void> {
  await note(tx, rows, used(rows.table));
}

/** The same where each made row hangs on the stored row of `columns` with which its own key begins: some are then named more than once. */
export async function noteUsedWithMade(
  tx: Transaction,
  {
    table,
    columns,
    made,
    batchId,
  }: Pick<Rows, "table" | "batchId"> & { readonly columns: 1 | 2; readonly made: string },
): Promise<void> {
  await run(
    tx,
    `insert into batch_made (batch_id, table_name, part, first, second)
     select batch_id, '${used(table)}', part, first, ${columns === 2 ? "second" : "null"} from batch_made where batch_id = ${batchId} and table_name = '${made}'`,
  );
}

const used = (table: string) => `used: ${table}`;

async function note(tx: Transaction, { key, from, batchId }: Rows, name: string): Promise<void> {
  const [first, second, third] = [0, 1, 2].map((place) =>
    key[place] === undefined ? "null::bigint[]" : `array_agg(${key[place]})`,
  );
  const [{ next } = { next: 0 }] = await rowsOf<{ next: number }>(
    tx,
    `select coalesce(max(part) + 1, 0)::integer as next from batch_made where batch_id = ${batchId} and table_name = '${name}'`,
  );
  await run(
    tx,
    `insert into batch_made (batch_id, table_name, part, first, second, third)
     select ${batchId}, '${name}', ${next} + n.row / ${keysInARow}, ${first}, ${second}, ${third}
     from (${from}) n group by n.row / ${keysInARow}`,
  );
}

const keys = `batch_made m cross join lateral unnest(m.first, m.second, m.third) as k(first, second, third)`;

/** SQL for the keys that the batch made, as batch_changes writes them: `table_name`, `key`. */
export function madeRows(batchId: number): string {
  return `select m.table_name, concat_ws(chr(31), k.first, k.second, k.third) as key from ${keys}
    where m.batch_id = ${batchId} and m.table_name not like 'used: %'`;
}

/** SQL for the rows on which rows of other batches hang, with the first of these: `table_name`, `key`, `batch_id`. */
export function rowsUsedByOthers(batchId: number): string {
  return `select substr(m.table_name, 7) as table_name, concat_ws(chr(31), k.first, k.second, k.third) as key, min(m.batch_id) as batch_id from ${keys}
    where m.batch_id <> ${batchId} and m.table_name like 'used: %' group by 1, 2`;
}
