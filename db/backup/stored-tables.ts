import type { Client } from "pg";

export interface StoredTable {
  readonly name: string;
  /** Those that are stored by themselves; what the database works out from others is worked out again. */
  readonly columns: readonly string[];
}

/** Every table that lasts, by name; the unlogged ones in which loads are weighed are not part of what is kept. */
export async function storedTables(client: Client): Promise<StoredTable[]> {
  const { rows } = await client.query<StoredTable>(`
    select c.relname as name, array_agg(a.attname::text order by a.attnum) as columns
    from pg_class c join pg_attribute a on a.attrelid = c.oid and a.attnum > 0 and not a.attisdropped and a.attgenerated = ''
    where c.relnamespace = 'public'::regnamespace and c.relkind in ('r', 'p') and c.relpersistence = 'p'
    group by 1 order by 1`);
  return rows;
}
