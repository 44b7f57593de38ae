// Which rows a batch made, kept in few rows of arrays: an entry for each would cost as much as the rows themselves.
import type { Transaction } from "@/db/database-types";
import { rowsOf, run } from "../staging/run";

/** Tables whose keys are numbers. The makings of other tables, which are few, stand in batch_changes. */
const numbered: ReadonlySet<string> = new Set(["units", "jobs", "part_lines", "readings", "attachments"]);

export function isNumbered(table: string): boolean {
  return numbered.has(table);
}

const keysInARow = 8192;

/** Notes rows as made by the batch. `from` gives their key columns and `row`, which only parts them. */
export async function noteMade(
  tx: Transaction,
  { table, key, from, batchId }: { table: string; key: readonly string[]; from: string; batchId: number },
): Promise<void> {
  const [first, second, third] = [0, 1, 2].map((place) =>
    key[place] === undefined ? "null" : `array_agg(${key[place]})`,
  );
  const [{ next } = { next: 0 }] = await rowsOf<{ next: number }>(
    tx,
    `select coalesce(max(part) + 1, 0)::integer as next from batch_made where batch_id = ${batchId} and table_name = '${table}'`,
  );
  await run(
    tx,
    `insert into batch_made (batch_id, table_name, part, first, second, third)
     select ${batchId}, '${table}', ${next} + n.row / ${keysInARow}, ${first}, ${second}, ${third}
     from (${from}) n group by n.row / ${keysInARow}`,
  );
}

/** SQL for the keys that the batch made, as batch_changes writes them: `table_name`, `key`. */
export function madeRows(batchId: number): string {
  return `select m.table_name, concat_ws(chr(31), k.first, k.second, k.third) as key
    from batch_made m cross join lateral unnest(m.first, m.second, m.third) as k(first, second, third) where m.batch_id = ${batchId}`;
}
