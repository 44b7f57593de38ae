import type { Transaction } from "@/db/database-types";
import { stagingSchema } from "@/db/search-path";
import { rowsOf, run } from "../staging/run";
import type { Staged } from "../staging/staged-kind";

interface Rewriting {
  /** By column: SQL of its value, in terms of the row `s` and the joined rows. */
  readonly set: Readonly<Record<string, string>>;
  /** Left joins to `s` that find no more than one row each. */
  readonly joins: string;
}

/**
 * Sets columns of all rows of a staging table by writing the table anew: to change the rows where they stand
 * would cost several times as much, and the database can share this work between processes.
 * @returns false where a join found several rows for one, and nothing was changed
 */
export async function rewriteStaged(tx: Transaction, table: string, { set, joins }: Rewriting): Promise<boolean> {
  const columns = await rowsOf<{ name: string; type: string }>(
    tx,
    `select attname as name, format_type(atttypid, atttypmod) as type from pg_attribute
     where attrelid = '${table}'::regclass and attnum > 0 and not attisdropped order by attnum`,
  );
  const values = columns.map(({ name, type }) =>
    set[name] === undefined ? `s.${name}` : `(${set[name]})::${type} as ${name}`,
  );
  await run(
    tx,
    `create unlogged table ${stagingSchema}.${table}_anew as select ${values.join(", ")} from ${table} s ${joins}`,
  );
  const [counted] = await rowsOf<{ same: boolean }>(
    tx,
    `select (select count(*) from ${table}) = (select count(*) from ${table}_anew) as same`,
  );
  if (counted?.same !== true) {
    await run(tx, `drop table ${table}_anew`);
    return false;
  }
  await run(tx, `drop table ${table}`);
  await run(tx, `alter table ${table}_anew rename to ${table}`);
  await analyzeStaged(tx, table);
  return true;
}

/** Without it the joins that follow are planned for an empty table. A small sample is enough to tell large from small. */
export async function analyzeStaged(tx: Transaction, table: string): Promise<void> {
  await run(
    tx,
    `set local default_statistics_target = 10; analyze ${table}; set local default_statistics_target to default`,
  );
}

/** Whether the rows were staged without their cells, and their table holds nothing yet: then they can be written anew as a whole. */
export async function isFirst(tx: Transaction, { bare }: Staged, target: string): Promise<boolean> {
  if (bare !== true) return false;
  const [found] = await rowsOf<{ any: boolean }>(tx, `select exists (select from ${target}) as any`);
  return found?.any === false;
}
