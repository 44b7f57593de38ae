import { sql } from "drizzle-orm";
import type { Reader } from "../database-types";

/** Sentences are given for so many rows of a table. */
const most = 20;

/**
 * Rows of watched tables that are not as the last entry of the change log has them, and tables that are no longer
 * watched as they were made to be: what somebody did past the log. Empty where all is well.
 */
export async function findRowsNotAsLogged(db: Reader): Promise<string[]> {
  const watchers = await db.rows<{ table: string; off: boolean; key: string }>(sql`
    select c.relname as table, bool_or(t.tgenabled = 'D') as off, max(encode(t.tgargs, 'escape')) as key
    from pg_trigger t join pg_class c on c.oid = t.tgrelid join pg_proc p on p.oid = t.tgfoid
    where p.proname in ('log_changes', 'refuse_change', 'chain_change') and c.relnamespace = 'public'::regnamespace group by 1 order by 1`);
  const found: string[] = [];
  for (const { table, off, key } of watchers) {
    if (off) found.push(`${table}: its triggers were switched off, so changes of it are not logged or not refused.`);
    if (key !== "") found.push(...(await differing(db, table, key.replace(/\\000$/, ""))));
  }
  return found;
}

/** An entry that stands for many rows says nothing of one of them, so rows whose own entry is older than such a one are left out. */
async function differing(db: Reader, table: string, key: string): Promise<string[]> {
  const rows = await db.rows<{ key: string; gone: boolean; loggedAt: string }>(sql`
    with logged as (
      select distinct on (key) * from change_log where table_name = ${table} and key <> '' order by key, change_id desc),
    many as (select max(change_id) as last from change_log where table_name = ${table} and key = '' and what <> 'added'),
    present as (select ${sql.raw(key)} as key, to_jsonb(r) as j from ${sql.identifier(table)} r)
    select l.key, p.key is null as gone, to_char(l.at, 'YYYY-MM-DD HH24:MI') as "loggedAt" from logged l left join present p using (key), many
    where l.change_id > coalesce(many.last, 0) and (l.what = 'removed') <> (p.key is null)
      or l.change_id > coalesce(many.last, 0) and l.what <> 'removed' and p.key is not null
        and encode(sha256(convert_to((p.j - array(select attname::text from pg_attribute
          where attrelid = ${table}::regclass and attnum > l.width))::text, 'UTF8')), 'hex') <> l.row_sha256
    order by l.change_id limit ${most}`);
  return rows.map(
    ({ key: row, gone, loggedAt }) =>
      `${table} ${row.replaceAll("\x1f", " ")}: ${gone ? "is gone" : "is not as it was logged"} (last entry ${loggedAt} UTC).`,
  );
}
