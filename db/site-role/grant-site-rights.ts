import type { Client } from "pg";
import { stagingSchema } from "../search-path";

/** Their triggers write them. Everybody else reads. */
export const onlyRead = ["change_log", "change_chain"] as const;

/** Gives the site's login what it needs of the schema as it stands, and takes everything else. */
export async function grantSiteRights(client: Client, role: string): Promise<void> {
  const site = client.escapeIdentifier(role);
  await client.query("start transaction");
  try {
    await client.query(`
      grant usage on schema public, ${stagingSchema}, drizzle to ${site};
      grant create on schema ${stagingSchema} to ${site};
      grant select, insert, update, delete on all tables in schema public to ${site};
      revoke insert, update, delete on ${onlyRead.join(", ")} from ${site};
      grant usage, select on all sequences in schema public to ${site};
      grant select on drizzle.__drizzle_migrations to ${site}`);
    for (const right of ["connect", "temporary"]) await grantOnDatabase(client, role, right);
    await client.query("commit");
  } catch (error) {
    await client.query("rollback").catch(() => {});
    throw error;
  }
}

/** Everybody has these unless somebody took them away, and an owner of the tables alone could not grant them. */
async function grantOnDatabase(client: Client, role: string, right: string): Promise<void> {
  const { rows } = await client.query<{ database: string; has: boolean }>(
    "select current_database() as database, has_database_privilege($1, current_database(), $2) as has",
    [role, right],
  );
  const [found] = rows;
  if (found === undefined || found.has) return;
  await client.query(
    `grant ${right} on database ${client.escapeIdentifier(found.database)} to ${client.escapeIdentifier(role)}`,
  );
}
