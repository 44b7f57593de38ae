import { onlyRead } from "./grant-site-rights";

interface Rights {
  readonly [column: string]: unknown;
  readonly may: boolean;
  readonly what: string;
}

/** What the login of the connection may do and the site's should not; empty where it may do no more than it must. */
export async function tooManyRights(rowsOf: (text: string) => Promise<readonly Rights[]>): Promise<readonly string[]> {
  const log = onlyRead.map((table) => `has_table_privilege('${table}', 'insert, update, delete, truncate')`);
  const rows = await rowsOf(`
    select pg_has_role(relowner, 'usage') as may, 'owns the tables, so that it could alter or drop them' as what from pg_class where oid = 'change_log'::regclass
    union all select ${log.join(" or ")}, 'may write the change log'
    union all select has_schema_privilege('public', 'create'), 'may make tables among those that last'
    union all select rolcreaterole or rolsuper, 'may make other logins' from pg_roles where rolname = current_user`);
  return rows.filter(({ may }) => may).map(({ what }) => what);
}
