import type { Client } from "pg";
import { grantSiteRights } from "./grant-site-rights";
import { siteRole } from "./site-address";

/** Tables that were made since are the site's to read and write as well, if the site has a login of its own. */
export async function grantAnew(client: Client): Promise<void> {
  const { rows } = await client.query<{ database: string }>("select current_database() as database");
  const role = siteRole(rows[0]?.database ?? "");
  const { rowCount } = await client.query("select from pg_roles where rolname = $1", [role]);
  if (rowCount === 1) await grantSiteRights(client, role);
}
